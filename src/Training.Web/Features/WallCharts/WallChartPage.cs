using Microsoft.Extensions.Localization;
using Training.Content.Modules;
using Training.Content.Procedures;
using Training.Content.Rendering;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;
using Training.Web.Features.Shared;

namespace Training.Web.Features.WallCharts;

/// <summary>The page of a wall chart.</summary>
/// <param name="Written">The procedure as it is published.</param>
/// <param name="Language">The language of the chart.</param>
/// <param name="PrintedOn">The day on which it is printed, as it is written.</param>
public sealed record WallChartPage(WrittenProcedure Written, string Language, string PrintedOn)
{
    /// <summary>The procedure with its texts in the language of the chart.</summary>
    public Procedure Procedure { get; } = Written.In(Language);

    /// <summary>The chart.</summary>
    public WallChart Chart { get; } = WallChart.Of(Written.In(Language), WordBook.For(Language));

    /// <summary>What stands on every chart.</summary>
    public ChartWords Words { get; } = ChartWords.In(Language);

    /// <summary>The language that was wished for; the chart's own where it is there.</summary>
    public required string Wished { get; init; }

    /// <summary>The module that teaches the procedure; null for none.</summary>
    public Module? Lesson { get; init; }

    /// <summary>The first eight digits of the hash that answers and records name the text by.</summary>
    public string ShortHash => Written.File.Hash.Hex[..8];

    /// <summary>The other languages that there is a chart in.</summary>
    public IEnumerable<string> OtherLanguages =>
        Written.Translations.Select(translation => translation.Language).Prepend(Training.Content.ContentLibrary.DefaultLanguage).Where(other => other != Language);

    /// <summary>The kinds of vehicle that the procedure tells apart, as they are called.</summary>
    public string Kinds => string.Join(" · ", Procedure.Variants.Select(ChassisKind.Named));
}

/// <summary>The words of every wall chart in one language.</summary>
/// <param name="First">That the vehicle's own instructions come before the chart.</param>
/// <param name="KeepOrder">What stands over the cautions.</param>
/// <param name="Never">What stands over what must never be done.</param>
/// <param name="Legend">How the plan is read.</param>
public sealed record ChartWords(string First, string KeepOrder, string Never, string Legend)
{
    private IStringLocalizer<Shared.Words> Book { get; init; } = null!;

    private LessonWords Signals { get; init; } = null!;

    /// <summary>The words of a language.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public static ChartWords In(string language)
    {
        var (words, lesson) = (WordBook.For(language), LessonWords.In(language));
        return new(
            words["The vehicle's own instructions, local law and licensed practice come first."],
            words["Keep the order, or:"],
            lesson.Never,
            words["Line or bar: what stands above it comes first. No line between two steps: any order. Dashed ring: only if needed, or one of several ways. Filled ring: a wait. Triangle: too early, it hurts somebody."])
        { Book = words, Signals = lesson };
    }

    /// <summary>A signal word of ISO 3864-2.</summary>
    /// <param name="word">Which.</param>
    public string Signal(SignalWord word) => word switch
    {
        SignalWord.Danger => Signals.Danger,
        SignalWord.Warning => Signals.Warning,
        SignalWord.Caution => Signals.Caution,
        _ => Signals.Notice,
    };

    /// <summary>Which revision of the procedure is printed, and when.</summary>
    /// <param name="revision">The revision.</param>
    /// <param name="hash">The first digits of its hash.</param>
    /// <param name="day">The day.</param>
    public string Printed(int revision, string hash, string day) => Book["Revision {0}, {1}, printed on {2}", revision, hash, day];

    /// <summary>What stands before the numbers of the steps that a step waits for.</summary>
    /// <param name="numbers">The numbers.</param>
    public string After(IReadOnlyList<int> numbers) => Book["after {0}", string.Join(", ", numbers)];
}

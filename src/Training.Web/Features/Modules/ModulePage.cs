using System.Globalization;
using Training.Content;
using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Records.Learning;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Modules;

/// <summary>A module in the list of lessons.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Read">That the person has read it; null where they have not.</param>
public sealed record ModuleLine(ModuleId Id, string Title, int Minutes, ModuleReadView? Read);

/// <summary>A lesson as it is read.</summary>
/// <param name="Module">The module.</param>
/// <param name="Lesson">The lesson as it is shown.</param>
/// <param name="Wanted">The language that was wished for.</param>
public sealed record ModulePage(Module Module, LessonPage Lesson, string Wanted)
{
    /// <summary>That the person has read it; null where they have not.</summary>
    public ModuleReadView? Read { get; init; }

    /// <summary>What can be practised of it.</summary>
    public IReadOnlyList<PractisedQuestion> Questions { get; init; } = [];

    /// <summary>The wall charts of what it teaches.</summary>
    public IReadOnlyList<ChartLink> Charts { get; init; } = [];

    /// <summary>The module after it; null for the last.</summary>
    public Module? Next { get; init; }

    /// <summary>The time zone that times are told in.</summary>
    public string Zone { get; init; } = Dates.NoShop;

    /// <summary>The answer to a check question that was just given; null where none was.</summary>
    public GivenAnswer? Given { get; init; }

    /// <summary>A check question as it is shown.</summary>
    /// <param name="check">The question.</param>
    public CheckPage Asked(LessonPart.Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new(Module.Id, Lesson.Language, check, Given?.Check == check.Number ? Given : null);
    }

    /// <summary>Where its numbers come from.</summary>
    public IReadOnlyList<Source> Sources => Module.In(Lesson.Language).Sources;

    /// <summary>Whether a source is told in another language than the lesson.</summary>
    public bool SourcesFellBack => Sources.Any(source => source.Language != Lesson.Language);

    /// <summary>Whether the lesson is not to be had in the language that was wished for.</summary>
    public bool FellBack => !string.Equals(Wanted, Lesson.Language, StringComparison.OrdinalIgnoreCase);

    /// <summary>The other languages that the lesson is to be had in, each by its own name.</summary>
    public IEnumerable<(string Code, string Name)> OtherLanguages => Module.Translations.Select(lesson => lesson.Language)
        .Prepend(ContentLibrary.DefaultLanguage).Where(language => language != Lesson.Language)
        .Select(language => (language, NameOf(language)));

    /// <summary>What a language calls itself.</summary>
    /// <param name="language">The language.</param>
    public static string NameOf(string language)
    {
        try
        {
            return CultureInfo.GetCultureInfo(language).NativeName;
        }
        catch (CultureNotFoundException)
        {
            return language;
        }
    }
}

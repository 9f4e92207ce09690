using System.ComponentModel;
using System.Globalization;
using Microsoft.Extensions.Localization;
using NodaTime.Text;
using Training.Records.Results;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Web.Features.Shared;

/// <summary>Results in words and in addresses.</summary>
public static class ResultWords
{
    private const int MostNamed = 3;

    /// <summary>The kinds of what can be got wrong, as addresses name them.</summary>
    /// <param name="kind">The kind.</param>
    public static string CodeOf(ChanceKind kind) => kind switch
    {
        ChanceKind.LeftOut => "left-out",
        ChanceKind.SecondWay => "second-way",
        ChanceKind.TooLate => "too-late",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>Reads a kind from an address; null where it is none.</summary>
    /// <param name="code">The text.</param>
    public static ChanceKind? ReadKind(string? code) =>
        Enum.GetValues<ChanceKind>().Where(kind => CodeOf(kind) == code).Select(kind => (ChanceKind?)kind).FirstOrDefault();

    /// <summary>A source as addresses name it.</summary>
    /// <param name="source">The source.</param>
    public static string CodeOf(WorkSource source) => source.ToString().ToLowerInvariant();

    /// <summary>Reads a source from an address; practice where it names none.</summary>
    /// <param name="code">The text.</param>
    public static WorkSource ReadSource(string? code) => Enum.GetValues<WorkSource>().FirstOrDefault(source => CodeOf(source) == code);

    /// <summary>Where orders were given.</summary>
    /// <param name="source">The source.</param>
    [return: Localizable(true)]
    public static string Where(WorkSource source) => source switch
    {
        WorkSource.Paper => "On papers",
        WorkSource.Vehicle => "At the vehicle",
        _ => "In practice",
    };

    /// <summary>The page of one thing of a procedure.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="what">The rule, decoy or step.</param>
    /// <param name="source">The source.</param>
    public static string AddressOf(ProcedureId procedure, Chance what, WorkSource source) =>
        $"/results/{procedure}/{CodeOf(what.Kind)}/{what.Subject}?source={CodeOf(source)}";

    /// <summary>A share in percent: whole numbers, a decimal below one.</summary>
    /// <param name="share">From 0 to 1, or a difference.</param>
    public static string Percent(double share) =>
        (share * 100).ToString(Math.Abs(share) is > 0 and < 0.00995 ? "0.0" : "0", CultureInfo.CurrentCulture) + "\u00a0%";

    /// <summary>A share with its numbers and its interval.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="share">The share, of at least one.</param>
    public static string Told(this IStringLocalizer<Words> words, Share share)
    {
        ArgumentNullException.ThrowIfNull(words);
        var interval = share.Interval();
        return words["{0} of {1}: {2} (between {3} and {4})", share.Part, share.Whole, Percent(share.Value!.Value), Percent(interval.Low), Percent(interval.High)];
    }

    /// <summary>What can be got wrong, in the reader's language.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="texts">The procedure in the reader's language.</param>
    /// <param name="what">The rule, decoy or step.</param>
    public static string Told(this IStringLocalizer<Words> words, Procedure texts, Chance what)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(texts);
        return what.Kind switch
        {
            ChanceKind.Rule => texts.Rules.FirstOrDefault(rule => rule.Id.Value == what.Subject) switch
            {
                OrderRule { AtLeast: { } time } rule => words["At least {0} between {1} and {2}", new SpokenTime(time.Seconds), Names(words, texts, rule.First), Names(words, texts, rule.Then)],
                OrderRule rule => words["{0} before {1}", Names(words, texts, rule.First), Names(words, texts, rule.Then)],
                StateRule rule => words["{0} only while {1}", Names(words, texts, [rule.Step]), string.Join(", ", rule.OnlyWhile.Select(setting => State(words, texts, setting)))],
                _ => words["A rule that is no longer in this job: {0}", what.Subject],
            },
            ChanceKind.LeftOut => words["Left out: {0}", Names(words, texts, WaysOf(texts, new(what.Subject)))],
            ChanceKind.Decoy when texts.Steps.Any(step => step.Id.Value == what.Subject) =>
                words["Done though it could not be done that day: {0}", Names(words, texts, [new(what.Subject)])],
            ChanceKind.Decoy => words["Done though it is never right: {0}", Names(words, texts, [new(what.Subject)])],
            ChanceKind.Again => words["Done again: {0}", Names(words, texts, [new(what.Subject)])],
            ChanceKind.SecondWay => words["Done besides another way: {0}", Names(words, texts, [new(what.Subject)])],
            _ => words["Done too late: {0}", Names(words, texts, [new(what.Subject)])],
        };
    }

    /// <summary>A group of people, or several together.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="part">The part.</param>
    public static string Told(this IStringLocalizer<Words> words, Part<GroupChoice> part)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(part);
        return part.Keys.Count <= MostNamed || part.Keys[0].Cut is Cut.Month or Cut.Revision
            ? part.Keys.Count <= MostNamed ? string.Join(", ", part.Keys.Select(choice => words.Told(choice)))
                : words["{0} to {1}", words.Told(part.Keys[0]), words.Told(part.Keys[^1])]
            : words["{0} others together", part.Keys.Count];
    }

    /// <summary>A group of people.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="choice">The group.</param>
    public static string Told(this IStringLocalizer<Words> words, GroupChoice choice)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(choice);
        return choice.Cut switch
        {
            Cut.Revision => choice.Since is { } since ? words["Revision {0}, since {1}", choice.Name, Dates.Day(since, Dates.NoShop)] : words["Revision {0}", choice.Name],
            Cut.Language => choice.Group.Length == 0 ? words["Language not noted"] : Tongues.NameOf(choice.Group),
            Cut.Shop => choice.Name.Length == 0 ? words["Of no shop"] : choice.Name,
            Cut.Month => YearMonthPattern.Iso.Parse(choice.Group) is { Success: true, Value: var month } ? Dates.YearMonth(month) : choice.Group,
            _ => choice.Name,
        };
    }

    private static IReadOnlyList<StepId> WaysOf(Procedure texts, StepId step) =>
        texts.Steps.FirstOrDefault(known => known.Id == step)?.Choice is { } choice
            ? [.. texts.Steps.Where(known => known.Choice == choice).Select(known => known.Id)]
            : [step];

    private static string Names(IStringLocalizer<Words> words, Procedure texts, IReadOnlyList<StepId> steps) =>
        string.Join(", ", steps.Select(step => words["“{0}”", texts.NameOf(step)].Value));

    private static string State(IStringLocalizer<Words> words, Procedure texts, FactSetting setting)
    {
        var fact = texts.Facts.FirstOrDefault(known => known.Id == setting.Fact);
        return words["{0}: “{1}”", fact?.Called ?? setting.Fact.Value, fact?.NameOf(setting.Value) ?? setting.Value.Value];
    }
}

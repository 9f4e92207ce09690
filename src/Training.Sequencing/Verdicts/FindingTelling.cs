using System.Globalization;
using System.Text;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Verdicts;

/// <summary>
/// The sentences of a finding, always in one order: what happened, why it matters, what can come of it, what to do
/// instead. Why it matters is said by the engine or, of a rule or a decoy, by its author.
/// </summary>
/// <param name="Happened">What happened.</param>
/// <param name="Matters">Why it matters; null where the author says it, or nobody does.</param>
/// <param name="Instead">What to do instead.</param>
public sealed record FindingTelling(Sentence Happened, Sentence? Matters, Sentence Instead)
{
    /// <summary>Why it matters, as the author of the finding's subject wrote it.</summary>
    public string? Because { get; init; }

    /// <summary>What can come of it, as the author of the finding's subject wrote it.</summary>
    public string? Otherwise { get; init; }

    /// <summary>The rule whose author speaks, where it is another than the finding's subject; null where the subject's author does, or nobody.</summary>
    public RuleId? SpokenBy { get; init; }

    /// <summary>Begins what can come of it.</summary>
    public static Sentence WhatCanHappen { get; } = "What can happen:";

    /// <summary>Text of an author as a whole sentence.</summary>
    /// <param name="text">The text, of which a full stop may be left out.</param>
    public static string Closed(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.Trim();
        return trimmed.Length == 0 || trimmed[^1] is '.' or '!' or '?' or '।' ? trimmed : trimmed + ".";
    }

    /// <summary>The sentences in English.</summary>
    public override string ToString()
    {
        var text = new StringBuilder(Happened.ToString());
        if (Matters is not null) text.Append(' ').Append(Matters);
        if (!string.IsNullOrWhiteSpace(Because)) text.Append(' ').Append(Closed(Because));
        if (!string.IsNullOrWhiteSpace(Otherwise)) text.Append(' ').Append(WhatCanHappen).Append(' ').Append(Closed(Otherwise));
        return text.Append(' ').Append(Instead).ToString();
    }
}

/// <summary>A step or decoy in the gap of a sentence: whoever says it in another language puts that language's text there.</summary>
/// <param name="Id">Which.</param>
/// <param name="Do">Its text in the language of the procedure.</param>
public sealed record StepName(StepId Id, string Do)
{
    /// <summary>A step by its name.</summary>
    /// <param name="step">The step.</param>
    public static StepName Of(Step step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return new(step.Id, step.Do);
    }

    /// <inheritdoc/>
    public override string ToString() => Do;
}

/// <summary>Several steps in the gap of a sentence.</summary>
/// <param name="Names">The steps.</param>
public sealed record StepNames(IReadOnlyList<StepName> Names)
{
    /// <inheritdoc/>
    public override string ToString() => string.Join(", ", Names.Select(name => $"“{name}”"));
}

/// <summary>A value of a fact in the gap of a sentence.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="Value">Its value.</param>
public sealed record FactState(FactId Fact, FactValue Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value.Value;
}

/// <summary>A time in the gap of a sentence, as people say it: seconds up to two minutes, then minutes and hours.</summary>
/// <param name="Seconds">The time in seconds.</param>
public sealed record SpokenTime(decimal Seconds) : IFormattable
{
    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => Seconds switch
    {
        < 120 => Number(Seconds, formatProvider) + " s",
        < 7200 => Number(Seconds / 60, formatProvider) + " min",
        _ => Number(Seconds / 3600, formatProvider) + " h",
    };

    /// <inheritdoc/>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);

    // Rounded upwards to a hundredth: a time to wait is never told shorter than it must be.
    private static string Number(decimal value, IFormatProvider? format) =>
        (Math.Ceiling(value * 100) / 100).ToString("0.##", format);
}

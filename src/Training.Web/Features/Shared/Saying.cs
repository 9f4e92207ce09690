using System.Globalization;
using Microsoft.Extensions.Localization;
using Training.Measures;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Web.Features.Shared;

/// <summary>Says in the reader's language what was put into sentences further down, where no language is known.</summary>
public static class Saying
{
    /// <summary>A refusal.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="refusal">The refusal.</param>
    public static string Say(this IStringLocalizer<Words> words, Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return words.Say(refusal.Said);
    }

    /// <summary>A sentence.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="sentence">The sentence.</param>
    /// <param name="procedure">The procedure in the reader's language, for the names of steps; null where none is named.</param>
    public static string Say(this IStringLocalizer<Words> words, Sentence sentence, Procedure? procedure = null)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(sentence);
        return sentence.Say(CultureInfo.CurrentCulture, template => words[template].Value, thing => thing switch
        {
            StepName step => procedure?.NameOf(step.Id) ?? step.Do,
            StepNames steps => string.Join(", ", steps.Names.Select(step => words["“{0}”", procedure?.NameOf(step.Id) ?? step.Do].Value)),
            FactId fact => FactOf(procedure, fact)?.Called ?? fact.Value,
            FactState state => FactOf(procedure, state.Fact)?.NameOf(state.Value) ?? state.Value.Value,
            Phrase phrase => words.Say(phrase),
            _ => thing,
        });
    }

    /// <summary>A phrase or a sentence about a measure.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="phrase">The phrase.</param>
    public static string Say(this IStringLocalizer<Words> words, Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.Say(CultureInfo.CurrentCulture, template => words[template].Value, thing => thing);
    }

    /// <summary>A finding: what happened, why it matters, what can come of it, what to do instead.</summary>
    /// <param name="words">The words of the interface.</param>
    /// <param name="finding">The finding.</param>
    /// <param name="procedure">The procedure that it was judged by, in the reader's language.</param>
    public static string Say(this IStringLocalizer<Words> words, Finding finding, Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Telling is not { } telling) return finding.Message;
        var (because, otherwise) = AuthorOn(finding, procedure);
        var parts = new List<string> { words.Say(telling.Happened, procedure) };
        if (telling.Matters is { } matters) parts.Add(words.Say(matters, procedure));
        if (!string.IsNullOrWhiteSpace(because)) parts.Add(FindingTelling.Closed(because));
        if (!string.IsNullOrWhiteSpace(otherwise)) parts.Add($"{words.Say(FindingTelling.WhatCanHappen)} {FindingTelling.Closed(otherwise)}");
        parts.Add(words.Say(telling.Instead, procedure));
        return string.Join(' ', parts);
    }

    /// <summary>What a step or a decoy says; its id where the procedure has none of it.</summary>
    /// <param name="procedure">The procedure in the reader's language.</param>
    /// <param name="id">Which.</param>
    public static string NameOf(this Procedure procedure, StepId id)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        return procedure.Steps.FirstOrDefault(step => step.Id == id)?.Do
            ?? procedure.Decoys.FirstOrDefault(decoy => decoy.Id == id)?.Do
            ?? id.Value;
    }

    private static Fact? FactOf(Procedure? procedure, FactId id) => procedure?.Facts.FirstOrDefault(fact => fact.Id == id);

    // Only a finding whose author spoke has his words; they are taken in the reader's language.
    private static (string? Because, string? Otherwise) AuthorOn(Finding finding, Procedure procedure)
    {
        var telling = finding.Telling!;
        if (telling.Because is null && telling.Otherwise is null) return (null, null);
        if (finding.Kind == FindingKind.Decoy && procedure.Decoys.FirstOrDefault(decoy => decoy.Id.Value == finding.Subject) is { } decoy)
            return (decoy.Because, decoy.Otherwise);
        var speaker = telling.SpokenBy?.Value ?? finding.Subject;
        return procedure.Rules.FirstOrDefault(rule => rule.Id.Value == speaker) is { } rule
            ? (rule.Because, rule.Otherwise)
            : (telling.Because, telling.Otherwise);
    }
}

using Training.Content.Modules;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Content.Scenarios;

/// <summary>The name of a scenario, the same as its file's.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct ScenarioId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>A situation at the vehicle that questions can be asked about.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Text">Its words in the default language.</param>
/// <param name="Procedure">The procedure that is right in it; null where just a reading is to be taken.</param>
public sealed record Scenario(ScenarioId Id, ScenarioText Text, ProcedureId? Procedure)
{
    /// <summary>The module that it belongs to; null where that follows from the procedure.</summary>
    public ModuleId? Module { get; init; }

    /// <summary>The reading to be taken; null where there is none.</summary>
    public ReadingTask? Reading { get; init; }

    /// <summary>What it is called in the default language.</summary>
    public string Title => Text.Title;

    /// <summary>The kind of vehicle; null takes the procedure's first, where it tells any apart.</summary>
    public VariantId? Variant { get; init; }

    /// <summary>The kinds of question that may be asked about it, at least one.</summary>
    public required IReadOnlyList<QuestionKind> Kinds { get; init; }

    /// <summary>What a colleague has already done; empty where the job is untouched.</summary>
    public IReadOnlyList<Entry> Start { get; init; } = [];

    /// <summary>The decoys that are offered; null offers all of the procedure's.</summary>
    public IReadOnlyList<StepId>? Show { get; init; }

    /// <summary>The steps that cannot be done in it, with the texts of the default language; usually none (<see cref="ScenarioJobs"/>).</summary>
    public IReadOnlyList<AbsentStep> Absent => Text.Absent;

    /// <summary>Its words in other languages.</summary>
    public IReadOnlyList<ScenarioText> Translations { get; init; } = [];

    /// <summary>The words in a language; where there are none, in the default language.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public ScenarioText In(string language) =>
        Translations.FirstOrDefault(text => string.Equals(text.Language, language, StringComparison.OrdinalIgnoreCase)) ?? Text;
}

/// <summary>The words of a scenario in one language.</summary>
/// <param name="Language">The language, such as <c>en</c>.</param>
/// <param name="Title">What it is called.</param>
/// <param name="File">The file that it was read from.</param>
public sealed record ScenarioText(string Language, string Title, ContentFile File)
{
    /// <summary>The words of its reading; null where it has none in this language.</summary>
    public ReadingWords? Reading { get; init; }

    /// <summary>Why the steps that cannot be done in it cannot, and what would happen: the same steps in every language.</summary>
    public IReadOnlyList<AbsentStep> Absent { get; init; } = [];
}

/// <summary>How a question is put; the codes of the files are the members' names in lower case with hyphens.</summary>
public enum QuestionKind
{
    /// <summary>Put the whole job in order.</summary>
    Order,

    /// <summary>Finish what a colleague has begun.</summary>
    Finish,

    /// <summary>Find the first fault in a colleague's order.</summary>
    FirstFault,

    /// <summary>Say what may be done next.</summary>
    Next,

    /// <summary>Say how long to wait.</summary>
    Wait,

    /// <summary>Say what happens if a step is done now.</summary>
    WhatIf,

    /// <summary>Take a reading and decide.</summary>
    Reading,
}

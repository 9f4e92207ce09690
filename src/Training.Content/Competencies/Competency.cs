using Training.Content.Modules;
using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Content.Competencies;

/// <summary>The name of a competency, the same as its file's.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct CompetencyId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>What a person can be shown to be able to do, how it is shown and how long that holds.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Title">What it is called.</param>
/// <param name="File">The file that it was read from.</param>
public sealed record Competency(CompetencyId Id, string Title, ContentFile File)
{
    /// <summary>What it is called in other languages, by the language's code.</summary>
    public IReadOnlyDictionary<string, string> Titles { get; init; } = new Dictionary<string, string>();

    /// <summary>What it is called in a language; in the default language where there is no other title.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public string TitleIn(string language) => Titles.GetValueOrDefault(language, Title);

    /// <summary>The modules to learn for it, in order, at least one.</summary>
    public required IReadOnlyList<ModuleId> Modules { get; init; }

    /// <summary>How its paper is made up and passed.</summary>
    public required PaperBlueprint Paper { get; init; }

    /// <summary>What is to be shown at a vehicle; null where the paper is enough.</summary>
    public ObservedRequirement? Observed { get; init; }

    /// <summary>How long a record holds.</summary>
    public required Period ValidFor { get; init; }

    /// <summary>How long before the end it may be renewed, the new time running on from the old end.</summary>
    public required Period RenewFrom { get; init; }

    /// <summary>How often somebody must confirm that the work is still done; null where nobody need.</summary>
    public Period? ConfirmEvery { get; init; }

    /// <summary>What becomes of records when a procedure is revised.</summary>
    public RevisionRule OnNewRevision { get; init; } = new RevisionRule.Keep();
}

/// <summary>How a paper is made up and passed.</summary>
/// <param name="Questions">What is drawn, in order, at least one.</param>
/// <param name="Time">How long the sitting lasts.</param>
/// <param name="PassMark">The mean score of the paper's answers in percent that is needed, from 1 to 100; besides, no answer may be unsafe.</param>
/// <param name="WaitAfterFailed">How long to wait after a failed paper.</param>
public sealed record PaperBlueprint(IReadOnlyList<QuestionDraw> Questions, Duration Time, int PassMark, Period WaitAfterFailed);

/// <summary>Questions of one kind that are drawn for a paper.</summary>
/// <param name="Kind">How they are put.</param>
/// <param name="From">The scenarios that are drawn from, at least as many as <paramref name="Count"/>.</param>
/// <param name="Count">How many are drawn, at least one.</param>
public sealed record QuestionDraw(QuestionKind Kind, IReadOnlyList<ScenarioId> From, int Count);

/// <summary>What is to be shown at a vehicle.</summary>
/// <param name="Procedures">The procedures, at least one.</param>
/// <param name="Within">How soon after the paper was passed.</param>
public sealed record ObservedRequirement(IReadOnlyList<ProcedureId> Procedures, Period Within);

/// <summary>What becomes of records when a procedure of the competency is revised.</summary>
public abstract record RevisionRule
{
    private RevisionRule()
    {
    }

    /// <summary>They hold until their own end.</summary>
    public sealed record Keep : RevisionRule;

    /// <summary>They must be renewed within a time of the new revision.</summary>
    /// <param name="Within">The time.</param>
    public sealed record Renew(Period Within) : RevisionRule;
}

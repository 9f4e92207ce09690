using Training.Content;
using Training.Content.Packing;
using Training.Content.Scenarios;
using Training.Sequencing.Comparing;

namespace Training.Web.Features.Packs;

/// <summary>What can be taken out, and what a pack would bring.</summary>
/// <param name="Content">What is served.</param>
public sealed record PacksPage(ContentLibrary Content)
{
    /// <summary>What the pack would bring; null where none was looked at.</summary>
    public PackIntake? Intake { get; init; }

    /// <summary>The scenarios that ask for an order.</summary>
    public IEnumerable<Scenario> Orders => Content.Scenarios.Where(scenario => scenario.Kinds.Contains(QuestionKind.Order));

    /// <summary>How many files of the pack would be written.</summary>
    public int ToWrite => Intake?.ToWrite.Count ?? 0;

    /// <summary>How many files of the pack are here as they are.</summary>
    public int Same => Intake?.Lines.Count(line => line.Comparison.Kind is null) ?? 0;

    /// <summary>The files that are new or differ, those that differ first: there is something to read.</summary>
    public IEnumerable<PackLine> Lines =>
        (Intake?.Lines ?? []).Where(line => line.Comparison.Kind is not null).OrderBy(line => line.Comparison.Kind == ChangeKind.Changed ? 0 : 1);
}

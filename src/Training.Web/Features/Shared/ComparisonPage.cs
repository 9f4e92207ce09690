using Training.Content.Comparing;
using Training.Records.Publishing;
using Training.Sequencing.Comparing;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>What is different between two states of a file, as a part of a page.</summary>
/// <param name="File">What is different.</param>
/// <param name="Judged">What was judged by the older one; null where that is not asked.</param>
public sealed record ComparisonPage(FileComparison File, JudgedCounts? Judged = null)
{
    /// <summary>The most places of a text that are shown: nobody looks at more one by one.</summary>
    public const int MostShown = 500;

    /// <summary>An id that no other comparison of the page has.</summary>
    public string Id { get; init; } = "comparison";

    /// <summary>The changes of a procedure in the order in which they matter: rules and steps before words about them.</summary>
    public IReadOnlyList<ProcedureChange> Changes =>
        [.. (File.Procedure?.Changes ?? []).OrderBy(change => change.Words is null ? 0 : 1).ThenBy(change => change.Subject.Kind switch
        {
            SubjectKind.Rule => 0,
            SubjectKind.Step => 1,
            SubjectKind.Decoy => 2,
            SubjectKind.Fact => 3,
            _ => 4,
        })];
}

/// <summary>An order that became right or wrong, as a part of a page.</summary>
/// <param name="Order">The order.</param>
/// <param name="Accepting">The revision that accepts it.</param>
/// <param name="Refusing">The revision that does not.</param>
/// <param name="Id">An id that nothing else of the page has.</param>
public sealed record ChangedOrderPage(ChangedOrder Order, Procedure Accepting, Procedure Refusing, string Id)
{
    /// <summary>Whether a step is one of those that the finding is about.</summary>
    /// <param name="step">The step.</param>
    public bool IsMeant(StepId step) => Order.Why.Steps.Contains(step);
}

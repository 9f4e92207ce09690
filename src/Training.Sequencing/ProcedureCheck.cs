using Training.Sequencing.Authoring;
using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing;

/// <summary>What an author must mend in a procedure before anybody can be graded by it.</summary>
public static class ProcedureCheck
{
    /// <summary>All problems at once, for every kind of vehicle; empty where the procedure is sound.</summary>
    /// <param name="procedure">The procedure.</param>
    public static IReadOnlyList<AuthoringProblem> Problems(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var problems = new ProblemList();
        NamesCheck.Find(procedure, problems);
        if (problems.Count > 0) return problems.All;
        foreach (var kind in procedure.Kinds) OrderCheck.Find(Layout.Of(procedure, kind), problems);
        return problems.All;
    }

    /// <summary>
    /// All problems of a procedure that can be graded by on one kind of vehicle. There gaps are looked at even where the
    /// listing is wrong, too: what a figure is left open for is said.
    /// </summary>
    internal static IReadOnlyList<AuthoringProblem> Problems(Grader grader)
    {
        var problems = new ProblemList();
        foreach (var problem in Problems(grader.Procedure)) problems.Add(problem);
        GapCheck.Find(grader.Layout, problems);
        return problems.All;
    }

    /// <summary>
    /// The problems that leave one kind of vehicle without an order to grade by, or the layout where there are none. A
    /// listing that is not right, or a gap that nothing can fill, is told to the author and does not stop the grader.
    /// </summary>
    internal static IReadOnlyList<AuthoringProblem> Problems(Procedure procedure, VariantId? variant, out Layout? layout)
    {
        layout = null;
        var problems = new ProblemList();
        NamesCheck.Find(procedure, problems);
        if (variant is { } asked && !procedure.Variants.Contains(asked))
            problems.Add(AuthoringCodes.UnknownVariant,
                $"The procedure knows no vehicle “{asked}”.", ProblemSubject.Procedure);
        if (problems.Count > 0) return problems.All;
        if (variant is null && procedure.Variants.Count > 0) variant = procedure.Variants[0];
        var laidOut = Layout.Of(procedure, variant);
        OrderCheck.FindWithoutOrder(laidOut, problems);
        if (problems.Count == 0) layout = laidOut;
        return problems.All;
    }
}

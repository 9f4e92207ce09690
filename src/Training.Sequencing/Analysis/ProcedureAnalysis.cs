using Training.Sequencing.Procedures;

namespace Training.Sequencing.Analysis;

/// <summary>What an author is told of a procedure that has an order behind its rules.</summary>
public static class ProcedureAnalysis
{
    // Of a long circle so many rules are taken out in turn.
    private const int MostTaken = 8;

    // A stage of the least time costs some ten times what a counted part costs.
    private const int StagesAnIdeal = 10;

    /// <summary>Analyses a procedure for the kind of vehicle of its grader.</summary>
    /// <param name="grader">The grader.</param>
    /// <param name="mirrored">The procedure that it undoes, where it names one and the caller has it.</param>
    /// <param name="limits">How much may be looked at.</param>
    public static AnalysisReport Of(Grader grader, Procedure? mirrored = null, AnalysisLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(grader);
        limits ??= AnalysisLimits.Default;
        var counted = CountedChoices.Of(grader.Layout, grader.Plans, limits);
        var isThere = LeastTime.IsThere(grader.Layout, grader.Plans);
        var shortest = isThere ? LeastTime.Of(grader.Layout, grader.Plans, limits.Ideals / StagesAnIdeal) : null;
        List<AuthoringRemark> remarks =
        [
            .. UntouchedSteps.Remarks([grader.Layout]),
            .. LonelyChoices.Remarks(grader.Procedure),
            .. mirrored is null ? [] : NotMirrored(grader, mirrored),
        ];
        if (isThere && shortest is null)
            remarks.Add(new(RemarkCodes.LeftOpen,
                "The least time is left open: there are too many orders to look through.", ProblemSubject.Procedure));
        return new()
        {
            Steps = counted.StepCount,
            Accepted = counted.Accepted,
            GuessChance = GuessChance.Of(counted),
            RedundantRules = RedundantRules.Of(grader.Layout),
            Shortest = shortest is { } seconds ? Duration.OnClock(seconds) : null,
            Problems = ProcedureCheck.Problems(grader),
            Remarks = remarks,
        };
    }

    /// <summary>
    /// The steps that no rule touches on any kind of vehicle, and choices that are none; quick enough for every save of a file.
    /// </summary>
    /// <param name="procedure">The procedure. One that is not sound gets no remarks: it has errors to mend first.</param>
    public static IReadOnlyList<AuthoringRemark> Remarks(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        return
        [
            .. UntouchedSteps.Remarks([.. Graders(procedure).Select(grader => grader.Layout)]),
            .. LonelyChoices.Remarks(procedure),
        ];
    }

    /// <summary>
    /// Every pair of the procedure that another one undoes which has no reversed pair there, on any kind of vehicle.
    /// </summary>
    /// <param name="procedure">The procedure that names a mirror.</param>
    /// <param name="mirrored">The procedure that it undoes.</param>
    public static IReadOnlyList<AuthoringRemark> NotMirrored(Procedure procedure, Procedure mirrored)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(mirrored);
        return [.. Graders(procedure).SelectMany(grader => NotMirrored(grader, mirrored)).Distinct()];
    }

    /// <summary>
    /// The rules that other rules already imply on every kind of vehicle. Where rules run in a circle an author is told of
    /// both faults at once: a rule counts that says nothing new whichever one of the circle is taken out.
    /// </summary>
    /// <param name="procedure">The procedure. Its names must be sound.</param>
    /// <param name="loop">The circle; see <see cref="RuleLoop"/>.</param>
    public static IReadOnlyList<RuleId> Redundant(Procedure procedure, IReadOnlyList<LoopPair> loop)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(loop);
        if (loop.Count == 0) return RedundantRules.Of([.. RuleLoop.Layouts(procedure)]);
        RuleId[] circle = [.. loop.Select(pair => pair.Rule).Distinct()];
        // Without some of its rules the facts may have no order any more; then nothing can be said of what is left.
        var mended = circle.Take(MostTaken).Select(rule => Without(procedure, rule)).Where(HasPlan)
            .Select(rest => RedundantRules.Of([.. RuleLoop.Layouts(rest)])).ToList();
        return mended.Count == 0 ? [] : [.. mended[0].Where(rule => !circle.Contains(rule) && mended.All(rules => rules.Contains(rule)))];
    }

    private static Procedure Without(Procedure procedure, RuleId taken) =>
        procedure with { Rules = [.. procedure.Rules.Where(rule => rule.Id != taken)] };

    private static bool HasPlan(Procedure procedure) => procedure.Kinds.All(kind => Grader.For(procedure, kind).IsOk);

    private static IEnumerable<Grader> Graders(Procedure procedure) =>
        procedure.Kinds.Select(kind => Grader.For(procedure, kind)).Where(made => made.IsOk).Select(made => made.Value);

    private static IEnumerable<AuthoringRemark> NotMirrored(Grader grader, Procedure mirrored)
    {
        if (grader.Procedure.Mirror is not { } mirror || mirror.Of != mirrored.Id) return [];
        var theirs = grader.Variant is { } variant && mirrored.Variants.Contains(variant) ? (VariantId?)variant : null;
        var made = Grader.For(mirrored, theirs);
        return made.IsOk ? MirroredPairs.Remarks(grader, made.Value) : [];
    }
}

/// <summary>What an analysis found.</summary>
public sealed record AnalysisReport
{
    /// <summary>How many steps each right order of the required steps has, one of each one-of group among them.</summary>
    public required int Steps { get; init; }

    /// <summary>How many right orders of the required steps there are, summed over the choices in one-of groups.</summary>
    public required AcceptedOrders Accepted { get; init; }

    /// <summary>
    /// The chance that somebody who knows nothing hits a right order: <see cref="Accepted"/> by the number of all
    /// arrangements of the required steps with any member of each group. A question that also shows decoys or optional
    /// steps is harder still.
    /// </summary>
    public required double GuessChance { get; init; }

    /// <summary>The rules that the other rules already imply, each looked at by itself.</summary>
    public required IReadOnlyList<RuleId> RedundantRules { get; init; }

    /// <summary>
    /// The least time that one person takes for the required steps, least waits included; null where finding it would
    /// pass the limits, and where nothing can fill a gap that a rule asks for.
    /// </summary>
    public required Duration? Shortest { get; init; }

    /// <summary>
    /// What the author must mend all the same, on any kind of vehicle: a listing that is not right, a gap that nothing can
    /// fill, another kind of vehicle without an order.
    /// </summary>
    public required IReadOnlyList<AuthoringProblem> Problems { get; init; }

    /// <summary>What the author should know.</summary>
    public required IReadOnlyList<AuthoringRemark> Remarks { get; init; }
}

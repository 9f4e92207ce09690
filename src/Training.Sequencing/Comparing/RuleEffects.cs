using System.Numerics;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>What each rule that is gone or new does by itself: the right orders of its own revision without it and with it.</summary>
internal static class RuleEffects
{
    // Each costs two counts, and nobody reads more of them.
    private const int MostRules = 8;

    public static IReadOnlyList<RuleEffect> Of(Grader before, Grader after, IReadOnlyList<ProcedureChange> changes, AnalysisLimits limits)
    {
        // What cannot be counted is not told, so nothing is drawn for an estimate.
        limits = limits with { Samples = 2 };
        List<RuleEffect> effects = [];
        foreach (var change in changes.Where(change => change.Subject.Kind == SubjectKind.Rule && change.Kind != ChangeKind.Changed).Take(MostRules))
        {
            var grader = change.Kind == ChangeKind.Gone ? before : after;
            if (Touches(grader, new(change.Subject.Id)) && Of(grader, new(change.Subject.Id), limits) is { } orders)
                effects.Add(new(new(change.Subject.Id), change.Kind, orders));
        }

        return effects;
    }

    private static bool Touches(Grader grader, RuleId rule) =>
        grader.Layout.Links.Any(link => link.Rule.Id == rule) || grader.Layout.Needs.Any(need => need.Rule.Id == rule);

    // Without the rule the rest may leave open what it settled; then there is no number to tell.
    private static BigInteger? Of(Grader with, RuleId rule, AnalysisLimits limits)
    {
        var rest = with.Procedure with { Rules = [.. with.Procedure.Rules.Where(other => other.Id != rule)] };
        if (Grader.For(rest, with.Variant) is not { IsOk: true } without) return null;
        var (fewer, more) = (RightOrderDraw.Of(with, limits).Accepted, RightOrderDraw.Of(without.Value, limits).Accepted);
        return fewer.IsExact && more.IsExact ? more.Count - fewer.Count : null;
    }
}

using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Findings;

/// <summary>
/// Why a step that was left out is needed, for the sentence alone. A step bears no reason of its own, but rules say what
/// it is good for: those that want it before something else, and those that ask for a state which it brings about. Only
/// where there is none of them, a rule on when the step itself may be done speaks of it. The gravest is told, of equals
/// the first listed.
/// </summary>
internal static class WhyNeeded
{
    /// <summary>The rule that says why a step is needed, or null.</summary>
    public static Rule? Of(Layout layout, int step) =>
        Gravest(layout, rule => IsFirst(layout, rule, step) || IsSetting(layout, rule, step))
        ?? Gravest(layout, rule => layout.NeedsOf[step].Any(need => need.Rule == rule));

    private static Rule? Gravest(Layout layout, Func<Rule, bool> speaks) => layout.Procedure.Rules
        .Where(rule => !string.IsNullOrWhiteSpace(rule.Because) || !string.IsNullOrWhiteSpace(rule.Otherwise)).Where(speaks)
        .OrderBy(rule => rule.Stakes.IsSafe).ThenByDescending(rule => rule.Stakes.Severity).FirstOrDefault();

    private static bool IsFirst(Layout layout, Rule rule, int step) =>
        layout.Links.Any(link => link.First == step && link.Rule == rule);

    private static bool IsSetting(Layout layout, Rule rule, int step) =>
        rule is StateRule state && layout.Needs.Any(need => need.Rule == rule && need.Step != step)
        && layout.Steps[step].Sets.Any(state.OnlyWhile.Contains);
}

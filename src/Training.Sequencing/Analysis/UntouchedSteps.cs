using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Analysis;

/// <summary>
/// Steps that may be done at any time: no rule names them, and no rule asks for a fact that they set. That can be meant;
/// often a rule was forgotten.
/// </summary>
internal static class UntouchedSteps
{
    /// <summary>The steps that no rule touches on any kind of vehicle for which they exist.</summary>
    public static IEnumerable<AuthoringRemark> Remarks(IReadOnlyList<Layout> layouts) =>
        layouts.SelectMany(layout => layout.Steps.Select((step, s) => (step, IsTouched: IsTouched(layout, s))))
            .GroupBy(seen => seen.step.Id)
            .Where(step => !step.Any(seen => seen.IsTouched))
            .Select(step => new AuthoringRemark(
                RemarkCodes.UntouchedStep,
                $"No rule touches the step “{step.Key}”: it may be done at any time. If that is not meant, write what must come before or after it.",
                new(SubjectKind.Step, step.Key.Value)));

    private static bool IsTouched(Layout layout, int step) =>
        layout.NeedsOf[step].Length > 0
        || layout.Links.Any(link => link.First == step || link.Then == step)
        || layout.Needs.Any(need => need.Settings.Any(setting => layout.Facts.SetBy(step, setting.Fact) >= 0));
}

using Training.Sequencing.Procedures;

namespace Training.Sequencing.Analysis;

/// <summary>
/// One-of groups with a single member on all kinds of vehicle together. Such a step is done in every right order, as any
/// other; often its brother was forgotten, or has the group's name spelt otherwise.
/// </summary>
internal static class LonelyChoices
{
    public static IEnumerable<AuthoringRemark> Remarks(Procedure procedure) => procedure.Steps
        .Where(step => step.Choice is not null)
        .GroupBy(step => step.Choice!.Value)
        .Where(group => group.Count() == 1)
        .Select(group => new AuthoringRemark(
            RemarkCodes.LonelyChoice,
            $"Step “{group.First().Id}” is the only one of “{group.Key}”: there is nothing to choose. Take “one-of” out, or give it another member.",
            new(SubjectKind.Step, group.First().Id.Value)));
}

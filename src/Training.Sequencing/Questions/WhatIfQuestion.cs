using Training.Sequencing.Analysis;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Questions;

/// <summary>
/// What can happen if this is done now? The consequence of the one rule that is broken stands among those of rules that
/// are not, none of which is about the step that is done; so just one is true.
/// </summary>
internal static class WhatIfQuestion
{
    private const int MostOptions = 4;
    private const int FewestOptions = 3;
    private const int Tries = 20;

    private static readonly FindingKind[] Kinds =
        [FindingKind.Order, FindingKind.State, FindingKind.TooSoon, FindingKind.Decoy];

    public static Outcome<ChoiceQuestion, Refusal> Draw(RightOrderDraw orders, IReadOnlyList<StepId> decoys, SeededDraw lots)
    {
        for (var tried = 0; tried < Tries; tried++)
        {
            if (PlantedFault.Draw(orders, Kinds, decoys, lots) is not { } planted) break;
            var about = planted.Answer.Entries[planted.Place!.Value - 1].Step;
            var subject = new ProblemSubject(
                planted.Finding.Kind == FindingKind.Decoy ? SubjectKind.Decoy : SubjectKind.Rule, planted.Finding.Subject);
            if (All(orders, decoys).FirstOrDefault(told => told.Consequence.Of == subject) is not { } right) continue;
            Consequence[] others = [.. All(orders, decoys)
                .Where(told => !told.Steps.Contains(about))
                .Select(told => told.Consequence)
                .DistinctBy(consequence => Plain(consequence.Text))
                .Where(consequence => Plain(consequence.Text) != Plain(right.Consequence.Text))];
            if (others.Length + 1 < FewestOptions) continue;
            var shown = lots.Shuffle([right.Consequence, .. lots.Shuffle(others).Take(MostOptions - 1)]);
            return Question(planted, about, right.Consequence, shown);
        }

        return new Refusal("This procedure tells of too few consequences to choose from.");
    }

    private static ChoiceQuestion Question(
        PlantedFault planted, StepId about, Consequence right, IReadOnlyList<Consequence> shown)
    {
        Option[] options = [.. shown.Select((told, at) => new Option(ChoiceQuestions.IdAt(at)) { Consequence = told })];
        return new(
            new(ChoiceKind.WhatIf, [.. planted.Answer.Entries.Take(planted.Place!.Value - 1)], options) { About = about },
            [.. options.Select(option => new Weighed(option.Id, option.Consequence == right) { Replayed = planted.Answer })],
            [planted.Finding]);
    }

    /// <summary>What the author wrote of rules that hold on this kind of vehicle, and of decoys that may appear.</summary>
    private static IEnumerable<Told> All(RightOrderDraw orders, IReadOnlyList<StepId> decoys)
    {
        var layout = orders.Grader.Layout;
        foreach (var rule in orders.Grader.Procedure.Rules.Where(rule => !string.IsNullOrWhiteSpace(rule.Otherwise)))
        {
            HashSet<StepId> steps =
            [
                .. layout.Links.Where(link => ReferenceEquals(link.Rule, rule))
                    .SelectMany(link => new[] { layout.IdOf(link.First), layout.IdOf(link.Then) }),
                .. layout.Needs.Where(need => ReferenceEquals(need.Rule, rule)).Select(need => layout.IdOf(need.Step)),
            ];
            if (steps.Count > 0) yield return new(steps, new(new(SubjectKind.Rule, rule.Id.Value), rule.Otherwise!.Trim()));
        }

        foreach (var decoy in orders.Grader.Procedure.Decoys.Where(decoy => decoys.Contains(decoy.Id)))
            if (!string.IsNullOrWhiteSpace(decoy.Otherwise))
                yield return new([decoy.Id], new(new(SubjectKind.Decoy, decoy.Id.Value), decoy.Otherwise.Trim()));
    }

    private static string Plain(string text) => text.Trim().TrimEnd('.', '!', '?').ToUpperInvariant();

    private sealed record Told(HashSet<StepId> Steps, Consequence Consequence);
}

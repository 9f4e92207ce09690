using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Content.Links;

/// <summary>What a scenario names exists, its start is possible, and each kind of question can be drawn of it.</summary>
internal static class ScenarioLinks
{
    // Lots differ, so that a kind for which some have no question is found out here and not by a technician.
    private const int SeedsTried = 8;

    public static void Check(ContentDrafts drafts, AnalysisLimits limits)
    {
        var counted = new Dictionary<(ProcedureId, VariantId?, string), RightOrderDraw>();
        foreach (var scenario in drafts.Scenarios.Values)
        {
            if (scenario.Module is { } module && !drafts.Modules.ContainsKey(module.Text))
                scenario.Problems.Error(module.Place, $"There is no module \"{module.Text}\": mend the id, or write modules/{module.Text}/lesson.md.");
            if (scenario.Procedure is not { } id) continue;
            if (!drafts.Procedures.TryGetValue(id.Text, out var draft))
                scenario.Problems.Error(id.Place, $"There is no procedure \"{id.Text}\": mend the id, or write procedures/{id.Text}.yaml.");
            else if (draft.Procedure is { } procedure)
                Check(scenario, draft, procedure, counted, limits);
        }
    }

    private static void Check(
        ScenarioDraft scenario, ProcedureDraft draft, Procedure procedure, Dictionary<(ProcedureId, VariantId?, string), RightOrderDraw> counted,
        AnalysisLimits limits)
    {
        if (scenario.Variant is { } variant && !procedure.Variants.Contains(new VariantId(variant.Text)))
        {
            scenario.Problems.Error(variant.Place, procedure.Variants.Count == 0
                ? $"The procedure \"{procedure.Id}\" tells no variants apart: remove the key."
                : $"The procedure \"{procedure.Id}\" has no variant \"{variant.Text}\": write one of {string.Join(", ", procedure.Variants)}.");
            return;
        }

        foreach (var shown in scenario.Show ?? [])
        {
            if (!procedure.Decoys.Any(decoy => decoy.Id.Value == shown.Text))
                scenario.Problems.Error(shown.Place, $"The procedure \"{procedure.Id}\" has no decoy \"{shown.Text}\": mend the id.");
        }

        var kind = scenario.Variant is { } text ? new VariantId(text.Text) : (VariantId?)null;
        if (!AbsentLinks.Check(scenario, procedure, kind)) return;
        var job = procedure.Without(scenario.Text.Absent);
        var grader = draft.Problems.HasErrors ? null : Grader.For(job, kind) is { IsOk: true } made ? made.Value : null;
        CheckStart(scenario, procedure, grader);
        if (scenario.Problems.HasErrors || draft.Problems.HasErrors || !AbsentLinks.LeaveAnOrder(scenario, grader) || grader is null) return;
        var key = (procedure.Id, kind, ScenarioJobs.KeyOf(scenario.Text.Absent));
        if (!counted.TryGetValue(key, out var orders)) counted.Add(key, orders = RightOrderDraw.Of(grader, limits));
        CheckKinds(scenario, orders);
    }

    private static void CheckKinds(ScenarioDraft draft, RightOrderDraw orders)
    {
        var scenario = draft.ToScenario();
        foreach (var (text, kind) in draft.Kinds)
        {
            if (kind.AsChoice() is not { } choice) continue;
            var why = Enumerable.Range(1, SeedsTried).Select(seed => scenario.Draw(choice, orders, new SeededDraw(seed)))
                .Where(question => !question.IsOk).Select(question => question.Fault.Sentence).FirstOrDefault();
            if (why is null) continue;
            draft.NotDrawn[kind] = why;
            draft.Problems.Error(text.Place, $"A question of the kind {Codes<QuestionKind>.Of(kind)} cannot be drawn of this scenario: {why} Take the kind out, or change the procedure, the variant or the start.");
        }
    }

    private static void CheckStart(ScenarioDraft scenario, Procedure procedure, Grader? grader)
    {
        if (scenario.Start.Count == 0) return;
        var allThere = true;
        foreach (var step in scenario.Start.Select(entry => entry.Step))
        {
            if (!procedure.Steps.Any(known => known.Id.Value == step.Text))
                scenario.Problems.Error(step.Place, $"The procedure \"{procedure.Id}\" has no step \"{Fields.Shown(step.Text)}\": mend the id.");
            else if (scenario.Absent.Any(absent => absent.Id.Text == step.Text))
                scenario.Problems.Error(step.Place, $"\"{step.Text}\" is absent in this scenario, so nobody has done it: take it out of \"start\" or out of \"absent\".");
            else continue;
            allThere = false;
        }

        if (!allThere || grader is null) return;
        var verdict = grader.Grade(new Answer([]) { Start = [.. scenario.Start.Select(entry => entry.ToEntry())] });
        if (!verdict.IsOk) scenario.Problems.Error(scenario.StartPlace, verdict.Fault.Sentence);
    }
}

using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Content.Links;

/// <summary>What a scenario names exists, and its start is possible.</summary>
internal static class ScenarioLinks
{
    public static void Check(ContentDrafts drafts)
    {
        foreach (var scenario in drafts.Scenarios.Values)
        {
            if (scenario.Procedure is not { } id) continue;
            if (!drafts.Procedures.TryGetValue(id.Text, out var draft))
                scenario.Problems.Error(id.Place, $"There is no procedure \"{id.Text}\": mend the id, or write procedures/{id.Text}.yaml.");
            else if (draft.Procedure is { } procedure)
                Check(scenario, draft, procedure);
        }
    }

    private static void Check(ScenarioDraft scenario, ProcedureDraft draft, Procedure procedure)
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

        CheckStart(scenario, draft, procedure);
    }

    private static void CheckStart(ScenarioDraft scenario, ProcedureDraft draft, Procedure procedure)
    {
        if (scenario.Start.Count == 0) return;
        var allThere = true;
        foreach (var entry in scenario.Start.Where(entry => !procedure.Steps.Any(step => step.Id.Value == entry.Step.Text)))
        {
            scenario.Problems.Error(entry.Step.Place, $"The procedure \"{procedure.Id}\" has no step \"{Yaml.Fields.Shown(entry.Step.Text)}\": mend the id.");
            allThere = false;
        }

        if (!allThere || draft.Problems.HasErrors) return;
        var variant = scenario.Variant is { } text ? new VariantId(text.Text) : (VariantId?)null;
        if (Grader.For(procedure, variant) is not { IsOk: true } grader) return;
        var verdict = grader.Value.Grade(new Answer([]) { Start = [.. scenario.Start.Select(entry => entry.ToEntry())] });
        if (!verdict.IsOk) scenario.Problems.Error(scenario.StartPlace, verdict.Fault.Sentence);
    }
}

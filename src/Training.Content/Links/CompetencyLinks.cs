using Training.Content.Competencies;
using Training.Content.Yaml;

namespace Training.Content.Links;

/// <summary>What a competency names exists, and its paper can be drawn.</summary>
internal static class CompetencyLinks
{
    public static void Check(ContentDrafts drafts)
    {
        foreach (var competency in drafts.Competencies.Values)
        {
            foreach (var module in competency.Modules.Where(module => !drafts.Modules.ContainsKey(module.Text)))
                competency.Problems.Error(module.Place, $"There is no module \"{module.Text}\": mend the id, or write modules/{module.Text}/lesson.md.");
            foreach (var procedure in competency.Observed.Where(procedure => !drafts.Procedures.ContainsKey(procedure.Text)))
                competency.Problems.Error(procedure.Place, $"There is no procedure \"{procedure.Text}\": mend the id, or write procedures/{procedure.Text}.yaml.");
            foreach (var draw in competency.Draws) CheckDraw(draw, competency.Problems, drafts);
        }
    }

    private static void CheckDraw(DrawDraft draw, ProblemList problems, ContentDrafts drafts)
    {
        var code = Codes<Scenarios.QuestionKind>.Of(draw.Kind);
        foreach (var id in draw.From)
        {
            if (!drafts.Scenarios.TryGetValue(id.Text, out var scenario))
                problems.Error(id.Place, $"There is no scenario \"{id.Text}\": mend the id, or write scenarios/{id.Text}.md.");
            else if (scenario.Kinds.Count > 0 && !scenario.MayBe(draw.Kind))
                problems.Error(id.Place, $"The scenario \"{id.Text}\" is not for questions of the kind {code}: add {code} to its kinds, or draw another.");
            else if (scenario.NotDrawn.TryGetValue(draw.Kind, out var why))
                problems.Error(id.Place, $"This line draws {code} of the scenario \"{id.Text}\", and that cannot be drawn: {why}");
        }
    }
}

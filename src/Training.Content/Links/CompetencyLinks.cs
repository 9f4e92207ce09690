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
            var taught = competency.Modules.Select(module => module.Text).ToHashSet(StringComparer.Ordinal);
            foreach (var draw in competency.Draws) CheckDraw(draw, taught, competency.Problems, drafts);
            PaperTells.Check(competency, drafts);
        }
    }

    private static void CheckDraw(DrawDraft draw, HashSet<string> taught, ProblemList problems, ContentDrafts drafts)
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
            else if (ModuleOf(scenario, taught, drafts) is { } module && !taught.Contains(module))
                problems.Hold(id.Place, $"The paper asks for the scenario \"{id.Text}\" of {module}, which the competency does not teach: name that module under modules, or draw another scenario.");
        }
    }

    /// <summary>The module that teaches what a scenario is about, one of those that are taught before others; null where none does.</summary>
    private static string? ModuleOf(Scenarios.ScenarioDraft scenario, HashSet<string> taught, ContentDrafts drafts)
    {
        if (scenario.Procedure is not { } procedure) return scenario.Module?.Text;
        var teaching = drafts.Modules.Where(module => module.Value.Lesson?.Procedures.Any(id => id.Text == procedure.Text) == true).Select(module => module.Key).ToList();
        return teaching.Find(taught.Contains) ?? teaching.FirstOrDefault();
    }
}

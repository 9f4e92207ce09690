using Training.Content.Procedures;
using Training.Sequencing.Analysis;

namespace Training.Content.Links;

/// <summary>A procedure is taught by some module; the procedure that it mirrors exists, and so do the steps of the pairs.</summary>
internal static class ProcedureLinks
{
    public static void Check(ContentDrafts drafts)
    {
        var taught = drafts.Modules.Values
            .SelectMany(module => module.Lessons)
            .SelectMany(lesson => lesson.Procedures)
            .Select(procedure => procedure.Text)
            .ToHashSet(StringComparer.Ordinal);
        var isAllKnown = drafts.Modules.Values.All(module => module.Lesson is { HasHead: true });
        foreach (var (id, draft) in drafts.Procedures)
        {
            if (isAllKnown && !taught.Contains(id))
                draft.Problems.Hold(draft.Places.Id, $"No module teaches \"{id}\": name it under procedures in a lesson's head, or remove the procedure.");
            CheckMirror(draft, drafts);
        }
    }

    private static void CheckMirror(ProcedureDraft draft, ContentDrafts drafts)
    {
        if (draft.Procedure?.Mirror is not { } mirror) return;
        if (!drafts.Procedures.TryGetValue(mirror.Of.Value, out var other))
        {
            draft.Problems.Error(draft.Places.Mirror, $"There is no procedure \"{mirror.Of}\" to mirror: mend the id, or write the procedure.");
            return;
        }

        if (other.Procedure is not { } theirs) return;
        foreach (var (pair, place) in mirror.Pairs.Zip(draft.Places.Pairs))
        {
            if (!theirs.Steps.Any(step => step.Id == pair.Theirs))
                draft.Problems.Error(place, $"The procedure \"{mirror.Of}\" has no step \"{Yaml.Fields.Shown(pair.Theirs.Value)}\": a pair is written as {{ their-step: my-step }}.");
        }

        if (!draft.Problems.HasErrors && !other.Problems.HasErrors) draft.Report(ProcedureAnalysis.NotMirrored(draft.Procedure, theirs));
    }
}

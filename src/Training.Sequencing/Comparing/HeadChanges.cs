using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>What a procedure says of itself as a whole.</summary>
internal static class HeadChanges
{
    public static void Find(Procedure before, Procedure after, ChangeList changes)
    {
        if (before.Id != after.Id) Changed($"It is called by the id “{after.Id}” now; it was “{before.Id}”.");
        changes.Words(SubjectKind.Procedure, "", before.Title, after.Title, "The title has changed.");
        if (before.Revision != after.Revision) Changed($"It is revision {after.Revision} now; it was {before.Revision}.");
        foreach (var variant in before.Variants.Except(after.Variants))
            changes.Gone(SubjectKind.Procedure, "", $"The kind of vehicle “{variant}” is gone.");
        foreach (var variant in after.Variants.Except(before.Variants))
            changes.New(SubjectKind.Procedure, "", $"There is a new kind of vehicle: “{variant}”.");
        if (before.Variants.Count > 0 && after.Variants.Count > 0 && before.Variants[0] != after.Variants[0])
            Changed($"The first kind of vehicle is “{after.Variants[0]}” now; it was “{before.Variants[0]}”.");
        if (!Common(before, after).SequenceEqual(Common(after, before))) Changed("The steps are listed in another order.");
        FindMirror(before.Mirror, after.Mirror, changes);

        void Changed(Sentence said) => changes.Changed(SubjectKind.Procedure, "", said);
    }

    private static void FindMirror(Mirror? before, Mirror? after, ChangeList changes)
    {
        if (before?.Of != after?.Of)
        {
            if (before is not null) changes.Gone(SubjectKind.Mirror, "", $"It no longer says that it undoes “{before.Of}”.");
            if (after is not null) changes.New(SubjectKind.Mirror, "", $"It says that it undoes “{after.Of}” now.");
        }
        else if (before is not null && after is not null && !before.Pairs.ToHashSet().SetEquals(after.Pairs))
        {
            changes.Changed(SubjectKind.Mirror, "", $"It says differently which step undoes which of “{after.Of}”.");
        }
    }

    private static IEnumerable<StepId> Common(Procedure mine, Procedure other) =>
        mine.Steps.Select(step => step.Id).Where(id => other.Steps.Any(step => step.Id == id));
}

using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Comparing;

/// <summary>What is to be done.</summary>
internal static class StepChanges
{
    public static void Find(Procedure before, Procedure after, ChangeList changes) => ChangeList.Pair(
        before.Steps, after.Steps, step => step.Id,
        gone => changes.Gone(SubjectKind.Step, gone.Id.Value, $"The step “{StepName.Of(gone)}” is gone."),
        isNew => changes.New(SubjectKind.Step, isNew.Id.Value, $"There is a new step: “{StepName.Of(isNew)}”."),
        (old, now) => Find(old, now, changes));

    private static void Find(Step old, Step now, ChangeList changes)
    {
        var name = StepName.Of(now);
        changes.Words(SubjectKind.Step, now.Id.Value, old.Do, now.Do, $"The words of the step “{now.Id}” have changed.");
        if (old.Takes != now.Takes)
            Changed($"“{name}” takes {new SpokenTime(now.Takes.Seconds)} now; it took {new SpokenTime(old.Takes.Seconds)}.");
        if (now.IsWait && !old.IsWait) Changed($"“{name}” is a wait now: its length is asked for.");
        if (old.IsWait && !now.IsWait) Changed($"“{name}” is no longer a wait.");
        if (now.IsOptional && !old.IsOptional) Changed($"“{name}” may be left out now.");
        if (old.IsOptional && !now.IsOptional) Changed($"“{name}” must be done now; it could be left out.");
        if (old.Choice is null && now.Choice is { } chosen) Changed($"“{name}” is one of the ways of “{chosen}” now: just one of them is done.");
        if (old.Choice is { } left && now.Choice is null) Changed($"“{name}” is no longer one of the ways of “{left}”.");
        if (old.Choice is { } was && now.Choice is { } other && was != other)
            Changed($"“{name}” is one of the ways of “{other}” now; it was one of those of “{was}”.");
        if (!old.Variants.ToHashSet().SetEquals(now.Variants))
            Changed($"“{name}” is done on {ChangeWords.Vehicles(now.Variants)} now; it was done on {ChangeWords.Vehicles(old.Variants)}.");
        if (!old.Sets.ToHashSet().SetEquals(now.Sets))
            Changed($"After “{name}” this holds now: {ChangeWords.All(now.Sets)}. Before, it was: {ChangeWords.All(old.Sets)}.");
        if (old.Stakes != now.Stakes)
            Changed($"What comes of leaving out “{name}”: {ChangeWords.Of(now.Stakes)}. Before, it was: {ChangeWords.Of(old.Stakes)}.");

        void Changed(Sentence said) => changes.Changed(SubjectKind.Step, now.Id.Value, said);
    }
}

using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Comparing;

/// <summary>What is never right.</summary>
internal static class DecoyChanges
{
    public static void Find(Procedure before, Procedure after, ChangeList changes) => ChangeList.Pair(
        before.Decoys, after.Decoys, decoy => decoy.Id,
        gone => changes.Gone(SubjectKind.Decoy, gone.Id.Value, $"The decoy “{Named(gone)}” is gone."),
        isNew => changes.New(SubjectKind.Decoy, isNew.Id.Value, $"There is a new decoy: “{Named(isNew)}”."),
        (old, now) =>
        {
            var id = now.Id.Value;
            changes.Words(SubjectKind.Decoy, id, old.Do, now.Do, $"The words of the decoy “{now.Id}” have changed.");
            changes.Words(SubjectKind.Decoy, id, old.Because, now.Because, $"Why “{Named(now)}” is never right is told otherwise.");
            changes.Words(SubjectKind.Decoy, id, old.Otherwise, now.Otherwise, $"What comes of “{Named(now)}” is told otherwise.");
            if (old.Stakes != now.Stakes)
                changes.Changed(SubjectKind.Decoy, id,
                    $"What comes of “{Named(now)}”: {ChangeWords.Of(now.Stakes)}. Before, it was: {ChangeWords.Of(old.Stakes)}.");
        });

    private static StepName Named(Decoy decoy) => new(decoy.Id, decoy.Do);
}

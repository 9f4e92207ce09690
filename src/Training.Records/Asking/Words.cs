using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;

namespace Training.Records.Asking;

/// <summary>What steps, decoys and consequences say in a language.</summary>
internal static class Words
{
    public static OfferedView Of(Procedure procedure, StepId id) =>
        procedure.Steps.FirstOrDefault(step => step.Id == id) is { } step
            ? new(id, step.Do, step.IsWait)
            : new(id, procedure.Decoys.First(decoy => decoy.Id == id).Do, false);

    public static DoneView Done(Procedure procedure, Entry entry) => new(entry.Step, Of(procedure, entry.Step).Do, entry.Stated);

    public static string WithTime(DoneView done) => done.Stated is { } stated ? $"{done.Do} ({stated})" : done.Do;

    /// <summary>A consequence in the procedure's own language; as it was drawn where that lacks it.</summary>
    public static string Otherwise(Procedure procedure, Consequence told) => (told.Of.Kind == SubjectKind.Decoy
        ? procedure.Decoys.FirstOrDefault(decoy => decoy.Id.Value == told.Of.Id)?.Otherwise
        : procedure.Rules.FirstOrDefault(rule => rule.Id.Value == told.Of.Id)?.Otherwise) ?? told.Text;
}

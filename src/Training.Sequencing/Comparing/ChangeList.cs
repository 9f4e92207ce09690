using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>Gathers what two revisions say differently.</summary>
internal sealed class ChangeList
{
    private readonly List<ProcedureChange> changes = [];

    public IReadOnlyList<ProcedureChange> All => changes;

    public void New(SubjectKind kind, string id, Sentence said) => changes.Add(new(ChangeKind.New, new(kind, id), said));

    public void Gone(SubjectKind kind, string id, Sentence said) => changes.Add(new(ChangeKind.Gone, new(kind, id), said));

    public void Changed(SubjectKind kind, string id, Sentence said) => changes.Add(new(ChangeKind.Changed, new(kind, id), said));

    /// <summary>Words that differ; nothing where they are the same.</summary>
    public void Words(SubjectKind kind, string id, string? before, string? after, Sentence said)
    {
        if (before == after) return;
        changes.Add(new(ChangeKind.Changed, new(kind, id), said) { Words = new(before ?? "", after ?? "") });
    }

    /// <summary>Goes through what both have, what is gone and what is new, each by its id.</summary>
    public static void Pair<T, TId>(
        IReadOnlyList<T> before, IReadOnlyList<T> after, Func<T, TId> idOf, Action<T> gone, Action<T> isNew, Action<T, T> both)
        where TId : notnull
    {
        var old = before.DistinctBy(idOf).ToDictionary(idOf);
        var now = after.DistinctBy(idOf).ToDictionary(idOf);
        foreach (var one in old.Values.Where(one => !now.ContainsKey(idOf(one)))) gone(one);
        foreach (var one in now.Values.Where(one => !old.ContainsKey(idOf(one)))) isNew(one);
        foreach (var one in now.Values)
            if (old.TryGetValue(idOf(one), out var other)) both(other, one);
    }
}

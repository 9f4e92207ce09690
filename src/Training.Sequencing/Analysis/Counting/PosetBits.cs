using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>
/// A poset on bit sets, with what falls apart in it: parts that nothing joins, and parts that stand one behind the other.
/// Its steps are numbered anew so that each has a higher number than all that come before it.
/// </summary>
internal sealed class PosetBits<T>
    where T : struct, IStepBits<T>
{
    private readonly T[] before;
    private readonly T[] after;
    private readonly T[] related;
    private readonly T[] unrelated;
    private readonly T[] twins;
    private readonly int[] names;

    public PosetBits(Poset poset)
    {
        Size = poset.Size;
        None = T.None(Size);
        var all = None;
        for (var step = 0; step < Size; step++) all = all.With(step);
        All = all;
        names = [.. Enumerable.Range(0, Size).OrderBy(poset.Before.CountIn)];
        before = Rows(poset.Before);
        after = Rows(poset.After);
        related = new T[Size];
        unrelated = new T[Size];
        twins = new T[Size];
        for (var step = 0; step < Size; step++)
        {
            related[step] = before[step].Or(after[step]);
            unrelated[step] = All.AndNot(related[step]).Without(step);
            twins[step] = None;
            for (var other = 0; other < Size; other++)
                if (before[step].Equals(before[other]) && after[step].Equals(after[other]))
                    twins[step] = twins[step].With(other);
        }
    }

    public int Size { get; }

    public T None { get; }

    public T All { get; }

    /// <summary>What comes before a step.</summary>
    public T Before(int step) => before[step];

    /// <summary>What comes after a step.</summary>
    public T After(int step) => after[step];

    /// <summary>The steps that nothing tells apart from a step, itself among them: the order is the same with any two changed.</summary>
    public T Twins(int step) => twins[step];

    /// <summary>The number that a step has in the poset itself.</summary>
    public int NameOf(int step) => names[step];

    /// <summary>The steps of a set that nothing of the set must come before.</summary>
    public T Minimal(T set)
    {
        var minimal = None;
        while (!set.IsEmpty)
        {
            // Whatever comes before the lowest step has a lower number, and so is not in the set.
            var step = set.Lowest;
            minimal = minimal.With(step);
            set = set.AndNot(after[step]).Without(step);
        }

        return minimal;
    }

    /// <summary>The part of a set that its lowest step is joined to by pairs.</summary>
    public T Joined(T set) => Reached(set, related);

    /// <summary>The part of a set that its lowest step is joined to by the lack of pairs: it stands before or behind all of the rest.</summary>
    public T Mingled(T set) => Reached(set, unrelated);

    private T Reached(T set, T[] near)
    {
        var open = None.With(set.Lowest);
        var reached = open;
        while (!open.IsEmpty)
        {
            var step = open.Lowest;
            var found = near[step].And(set).AndNot(reached);
            reached = reached.Or(found);
            if (reached.Equals(set)) return set;
            open = open.Without(step).Or(found);
        }

        return reached;
    }

    private T[] Rows(BitRows rows)
    {
        var numbers = new int[Size];
        for (var step = 0; step < Size; step++) numbers[names[step]] = step;
        var made = new T[Size];
        for (var step = 0; step < Size; step++)
        {
            made[step] = None;
            foreach (var other in new EachBit(rows.Row(names[step]))) made[step] = made[step].With(numbers[other]);
        }

        return made;
    }
}

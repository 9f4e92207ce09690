using Training.Sequencing.Ordering;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>A partial order of things numbered from 0: what must come before and after each, followed through to the end.</summary>
internal sealed class Poset
{
    private Poset(int size, BitRows after, BitRows before) => (Size, After, Before) = (size, after, before);

    public int Size { get; }

    /// <summary>For every thing those that come after it.</summary>
    public BitRows After { get; }

    /// <summary>For every thing those that come before it.</summary>
    public BitRows Before { get; }

    /// <summary>The order that some pairs make; they must not run in a circle.</summary>
    public static Poset Of(int size, IEnumerable<(int First, int Then)> pairs)
    {
        var after = Closure.Of([.. pairs.Select(pair => new OrderPair(pair.First, pair.Then, null!))], size);
        return new(size, after, Closure.Turned(after));
    }

    /// <summary>The order of some steps of a plan, numbered as they are given.</summary>
    public static Poset Of(Plan plan, IReadOnlyList<int> steps)
    {
        var after = new BitRows(steps.Count, steps.Count);
        for (var a = 0; a < steps.Count; a++)
            for (var b = 0; b < steps.Count; b++)
                if (plan.After[steps[a], steps[b]]) after.Set(a, b);
        return new(steps.Count, after, Closure.Turned(after));
    }

    /// <summary>The same read backwards: it has as many orders, each turned round.</summary>
    public Poset Turned() => new(Size, Before, After);

    /// <summary>Whether two posets are the same, numbers and all.</summary>
    public bool IsSame(Poset other)
    {
        if (Size != other.Size) return false;
        for (var a = 0; a < Size; a++)
            if (!After.Row(a).SequenceEqual(other.After.Row(a))) return false;
        return true;
    }
}

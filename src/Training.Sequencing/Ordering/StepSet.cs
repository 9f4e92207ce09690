using System.Numerics;

namespace Training.Sequencing.Ordering;

/// <summary>A set of steps by number. Two sets with the same steps are equal; a set that is a key is no more changed.</summary>
internal sealed class StepSet : IEquatable<StepSet>
{
    private readonly ulong[] words;

    public StepSet(int stepCount) => words = new ulong[(stepCount + 63) >> 6];

    private StepSet(ulong[] words) => this.words = words;

    public int Count
    {
        get
        {
            var count = 0;
            foreach (var word in words) count += BitOperations.PopCount(word);
            return count;
        }
    }

    public bool Has(int step) => (words[step >> 6] >> step & 1) != 0;

    public void Add(int step) => words[step >> 6] |= 1UL << step;

    public void Remove(int step) => words[step >> 6] &= ~(1UL << step);

    public StepSet Copy() => new([.. words]);

    public bool Equals(StepSet? other) => other is not null && words.AsSpan().SequenceEqual(other.words);

    public override bool Equals(object? obj) => Equals(obj as StepSet);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var word in words) hash.Add(word);
        return hash.ToHashCode();
    }
}

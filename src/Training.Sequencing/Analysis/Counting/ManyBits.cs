using System.Numerics;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>A set of any number of steps.</summary>
internal readonly struct ManyBits : IStepBits<ManyBits>
{
    private readonly ulong[] words;

    private ManyBits(ulong[] words) => this.words = words;

    public static ManyBits None(int size) => new(new ulong[(size + 63) >> 6]);

    public bool IsEmpty => !words.AsSpan().ContainsAnyExcept(0UL);

    public int Count
    {
        get
        {
            var count = 0;
            foreach (var word in words) count += BitOperations.PopCount(word);
            return count;
        }
    }

    public int Lowest
    {
        get
        {
            var word = words.AsSpan().IndexOfAnyExcept(0UL);
            return (word << 6) + BitOperations.TrailingZeroCount(words[word]);
        }
    }

    public bool Has(int step) => (words[step >> 6] >> step & 1) != 0;

    public ManyBits With(int step)
    {
        ulong[] changed = [.. words];
        changed[step >> 6] |= 1UL << step;
        return new(changed);
    }

    public ManyBits Without(int step)
    {
        ulong[] changed = [.. words];
        changed[step >> 6] &= ~(1UL << step);
        return new(changed);
    }

    public ManyBits And(ManyBits other)
    {
        var both = new ulong[words.Length];
        for (var w = 0; w < both.Length; w++) both[w] = words[w] & other.words[w];
        return new(both);
    }

    public ManyBits Or(ManyBits other)
    {
        var either = new ulong[words.Length];
        for (var w = 0; w < either.Length; w++) either[w] = words[w] | other.words[w];
        return new(either);
    }

    public ManyBits AndNot(ManyBits other)
    {
        var rest = new ulong[words.Length];
        for (var w = 0; w < rest.Length; w++) rest[w] = words[w] & ~other.words[w];
        return new(rest);
    }

    public bool Equals(ManyBits other) => words.AsSpan().SequenceEqual(other.words);

    public override bool Equals(object? obj) => obj is ManyBits other && Equals(other);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var word in words) hash.Add(word);
        return hash.ToHashCode();
    }
}

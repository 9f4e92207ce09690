using System.Numerics;

namespace Training.Sequencing.Analysis.Counting;

/// <summary>A set of at most 64 steps.</summary>
internal readonly struct FewBits(ulong bits) : IStepBits<FewBits>
{
    private readonly ulong bits = bits;

    public static FewBits None(int size) => default;

    public bool IsEmpty => bits == 0;

    public int Count => BitOperations.PopCount(bits);

    public int Lowest => BitOperations.TrailingZeroCount(bits);

    public bool Has(int step) => (bits >> step & 1) != 0;

    public FewBits With(int step) => new(bits | 1UL << step);

    public FewBits Without(int step) => new(bits & ~(1UL << step));

    public FewBits And(FewBits other) => new(bits & other.bits);

    public FewBits Or(FewBits other) => new(bits | other.bits);

    public FewBits AndNot(FewBits other) => new(bits & ~other.bits);

    public bool Equals(FewBits other) => bits == other.bits;

    public override bool Equals(object? obj) => obj is FewBits other && Equals(other);

    // Neighbouring sets differ in single bits; a multiplication spreads them over the buckets (Fibonacci hashing,
    // D. E. Knuth, The Art of Computer Programming 3, section 6.4).
    public override int GetHashCode() => (int)(bits * 0x9E3779B97F4A7C15UL >> 32);
}

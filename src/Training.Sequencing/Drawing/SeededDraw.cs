using System.Numerics;

namespace Training.Sequencing.Drawing;

/// <summary>
/// Draws lots from a seed: the same seed gives the same lots on every machine and in every version, so that a paper can be
/// drawn again. The generator is xoshiro256** 1.0, its state filled by SplitMix64 (Blackman and Vigna, "Scrambled linear
/// pseudorandom number generators", ACM TOMS 47, 2021; https://prng.di.unimi.it). It is no source of secrets: the seed
/// must come from one. Not safe to share between threads.
/// </summary>
public sealed class SeededDraw
{
    private readonly long seed;
    private ulong s0, s1, s2, s3;

    /// <summary>Starts from a seed.</summary>
    /// <param name="seed">Any number.</param>
    public SeededDraw(long seed)
    {
        this.seed = seed;
        var fill = unchecked((ulong)seed);
        (s0, s1, s2, s3) = (SplitMix(ref fill), SplitMix(ref fill), SplitMix(ref fill), SplitMix(ref fill));
    }

    internal SeededDraw(ulong s0, ulong s1, ulong s2, ulong s3) => (this.s0, this.s1, this.s2, this.s3) = (s0, s1, s2, s3);

    /// <summary>
    /// Lots of their own for a numbered part, such as one question of a paper: what is drawn for one part does not
    /// depend on how much was drawn for another.
    /// </summary>
    /// <param name="part">The part's number.</param>
    public SeededDraw For(int part)
    {
        var mix = unchecked((ulong)seed ^ (0xD1B54A32D192ED03UL * ((ulong)(uint)part + 1)));
        return new(unchecked((long)SplitMix(ref mix)));
    }

    /// <summary>64 random bits.</summary>
    public ulong Next()
    {
        var result = BitOperations.RotateLeft(s1 * 5, 7) * 9;
        var t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = BitOperations.RotateLeft(s3, 45);
        return result;
    }

    /// <summary>A number from 0 up to, not including, a bound; each as likely as the others.</summary>
    /// <param name="bound">The bound, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bound is below 1.</exception>
    public int Below(int bound)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bound, 1);
        // Numbers of the last, incomplete round of the bound are drawn again, or the small results were likelier.
        var range = (ulong)bound;
        var limit = ulong.MaxValue - (ulong.MaxValue % range + 1) % range;
        ulong drawn;
        do drawn = Next();
        while (drawn > limit);
        return (int)(drawn % range);
    }

    /// <summary>A whole number of any size from 0 up to, not including, a bound; each as likely as the others.</summary>
    /// <param name="bound">The bound, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bound is below 1.</exception>
    public BigInteger Below(BigInteger bound)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bound, BigInteger.One);
        var bits = (int)(bound - BigInteger.One).GetBitLength();
        BigInteger drawn;
        do
        {
            drawn = BigInteger.Zero;
            for (var left = bits; left > 0; left -= 64)
                drawn = (drawn << Math.Min(64, left)) | (Next() >> Math.Max(0, 64 - left));
        }
        while (drawn >= bound);
        return drawn;
    }

    /// <summary>The items in a random order, every order as likely as the others (Fisher and Yates; Durstenfeld 1964).</summary>
    /// <param name="items">The items.</param>
    public IReadOnlyList<T> Shuffle<T>(IReadOnlyList<T> items) => Choose(items, (items ?? throw new ArgumentNullException(nameof(items))).Count);

    /// <summary>Some of the items in a random order, every choice and order as likely as the others.</summary>
    /// <param name="items">The items.</param>
    /// <param name="count">How many, from 0 to the number of items.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are not that many.</exception>
    public IReadOnlyList<T> Choose<T>(IReadOnlyList<T> items, int count)
    {
        ArgumentNullException.ThrowIfNull(items);
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, items.Count);
        T[] drawn = [.. items];
        for (var place = 0; place < count; place++)
        {
            var other = place + Below(drawn.Length - place);
            (drawn[place], drawn[other]) = (drawn[other], drawn[place]);
        }

        return drawn[..count];
    }

    internal static ulong SplitMix(ref ulong state)
    {
        state = unchecked(state + 0x9E3779B97F4A7C15UL);
        var z = state;
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EBUL);
        return z ^ (z >> 31);
    }
}

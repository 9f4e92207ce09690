namespace Training.Measures.Tests.Readings;

/// <summary>A stream of bits from a seed (SplitMix64, public domain constants), as the caller of a draw brings one.</summary>
internal static class Bits
{
    public static Func<ulong> From(ulong seed)
    {
        var state = seed;
        return () =>
        {
            state += 0x9E3779B97F4A7C15;
            var mixed = state;
            mixed = (mixed ^ mixed >> 30) * 0xBF58476D1CE4E5B9;
            mixed = (mixed ^ mixed >> 27) * 0x94D049BB133111EB;
            return mixed ^ mixed >> 31;
        };
    }
}

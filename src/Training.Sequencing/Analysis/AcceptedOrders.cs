using System.Numerics;

namespace Training.Sequencing.Analysis;

/// <summary>How many right orders there are.</summary>
/// <param name="Count">The number; the best estimate where it is not exact.</param>
/// <param name="IsExact">Whether it was counted to the end.</param>
/// <param name="Low">The number itself, or the lower end of a 95 % interval.</param>
/// <param name="High">The number itself, or the upper end of a 95 % interval.</param>
public sealed record AcceptedOrders(BigInteger Count, bool IsExact, BigInteger Low, BigInteger High)
{
    internal static AcceptedOrders Exactly(BigInteger count) => new(count, true, count, count);
}

/// <summary>How much an analysis may look at before it estimates or leaves a thing open. There is no clock in it.</summary>
/// <param name="Ideals">
/// How many parts of the order of steps may be counted, some 100 bytes each; parts of more than 64 steps count for more.
/// </param>
/// <param name="Samples">How many orders are drawn for an estimate, at least 2.</param>
public sealed record AnalysisLimits(long Ideals, int Samples)
{
    /// <summary>Four million ideals: some 400 MB and seconds at the very most; 2 000 samples.</summary>
    public static AnalysisLimits Default { get; } = new(4_000_000, 2_000);
}

using System.Numerics;

namespace Training.Sequencing.Analysis;

/// <summary>
/// The mean of weights that are known by their logarithms, with its 95 % interval: 1.96 standard errors of the mean each
/// way, taken on the scale of logarithms, on which a mean of weights of very unlike sizes is less skewed (by the delta
/// method the standard error of a logarithm is the relative standard error). Where a few draws carry the whole sum,
/// the interval is too narrow.
/// </summary>
internal static class Estimate
{
    private const double HalfWidth = 1.96;

    public static AcceptedOrders Of(ReadOnlySpan<double> logs)
    {
        var highest = double.NegativeInfinity;
        foreach (var log in logs) highest = Math.Max(highest, log);
        var (sum, squares) = (0.0, 0.0);
        foreach (var log in logs)
        {
            var weight = Math.Exp(log - highest);
            sum += weight;
            squares += weight * weight;
        }

        var mean = sum / logs.Length;
        var variance = Math.Max(0, (squares / logs.Length) - (mean * mean)) * logs.Length / (logs.Length - 1);
        var error = Math.Sqrt(variance / logs.Length) / mean;
        var middle = highest + Math.Log(mean);
        return new(
            FromLog(middle),
            IsExact: false,
            BigInteger.Max(BigInteger.One, FromLog(middle - (HalfWidth * error))),
            FromLog(middle + (HalfWidth * error)) + BigInteger.One);
    }

    /// <summary>The whole number nearest to a power of e, to the 15 digits that a floating-point number holds.</summary>
    private static BigInteger FromLog(double log)
    {
        var shift = Math.Max(0, (int)(log / Math.Log(2)) - 60);
        return new BigInteger(Math.Round(Math.Exp(log - (shift * Math.Log(2))))) << shift;
    }
}

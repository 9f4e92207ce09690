using System.Numerics;
using Training.Sequencing.Analysis.Counting;

namespace Training.Sequencing.Analysis;

/// <summary>The chance to guess a right order: right orders by all arrangements.</summary>
internal static class GuessChance
{
    /// <summary>The chance among all arrangements of the required steps with any member of each group.</summary>
    public static double Of(CountedChoices counted)
    {
        var all = counted.Combinations * Factorials.Of(counted.StepCount);
        var ratio = (double)counted.Accepted.Count / (double)all;
        return double.IsNormal(ratio)
            ? Math.Min(1, ratio)
            : Math.Exp(BigInteger.Log(counted.Accepted.Count) - BigInteger.Log(all));
    }
}

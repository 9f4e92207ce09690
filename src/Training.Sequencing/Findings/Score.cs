namespace Training.Sequencing.Findings;

/// <summary>The share of the job that stands: what is kept, less what must go and what came too soon.</summary>
internal static class Score
{
    private const decimal JustBelowFull = 99.99m;

    /// <summary>From 0 to 100, to two decimals, half to even; 100 just where nothing was found.</summary>
    /// <param name="kept">How many entries can stay.</param>
    /// <param name="dropped">How many must go.</param>
    /// <param name="findings">What was found.</param>
    /// <param name="toDo">How many steps the answer had to do.</param>
    public static decimal Of(int kept, int dropped, FindingList findings, int toDo)
    {
        if (findings.Count == 0) return 100m;
        if (toDo == 0) return 0m;
        var good = Math.Max(0, kept - dropped - findings.TooSoonCount);
        return Math.Min(JustBelowFull, Math.Round(100m * good / toDo, 2, MidpointRounding.ToEven));
    }
}

using System.Diagnostics;

namespace Training.Benchmarks;

/// <summary>Medians of repeated runs, warmed up first.</summary>
internal static class Measure
{
    /// <summary>The median time of one call in microseconds, and the bytes that a call allocates.</summary>
    public static (double Microseconds, double Bytes) Median(Action action, int warmUps, int runs, int callsARun = 1)
    {
        for (var w = 0; w < warmUps; w++) action();
        var times = new double[runs];
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var r = 0; r < runs; r++)
        {
            var start = Stopwatch.GetTimestamp();
            for (var c = 0; c < callsARun; c++) action();
            times[r] = Stopwatch.GetElapsedTime(start).TotalMicroseconds / callsARun;
        }

        var bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / ((double)runs * callsARun);
        return (MedianOf(times), bytes);
    }

    /// <summary>The median time of asking once, and of the processor's own work in it, both in milliseconds.</summary>
    /// <param name="warmUps">How often it is asked before anything counts.</param>
    /// <param name="runs">How often it counts.</param>
    /// <param name="ask">What is asked.</param>
    public static async Task<(double Clock, double Processor)> Asked(int warmUps, int runs, Func<Task> ask)
    {
        var (clock, processor) = (new List<double>(), new List<double>());
        for (var run = 0; run < warmUps + runs; run++)
        {
            var (start, busy) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
            await ask();
            if (run < warmUps) continue;
            clock.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            processor.Add((Environment.CpuUsage.TotalTime - busy).TotalMilliseconds);
        }

        return (MedianOf([.. clock]), MedianOf([.. processor]));
    }

    public static double MedianOf(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length % 2 == 1
            ? sorted[sorted.Length / 2]
            : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }

    /// <summary>
    /// The exponent of a power by which a time grows with a size: the slope of a straight line through the logarithms of
    /// both, by least squares.
    /// </summary>
    public static double GrowthExponent(IReadOnlyList<(double Size, double Time)> points) =>
        Growth([.. points.Select(point => (Math.Log(point.Size), point.Time))]);

    /// <summary>
    /// The rate at which a time grows by multiplication: the slope of a straight line through the logarithms of the times,
    /// by least squares.
    /// </summary>
    public static double Growth(IReadOnlyList<(double Size, double Time)> points)
    {
        var (x, y) = (points.Average(point => point.Size), points.Average(point => Math.Log(point.Time)));
        return points.Sum(point => (point.Size - x) * (Math.Log(point.Time) - y)) / points.Sum(point => (point.Size - x) * (point.Size - x));
    }
}

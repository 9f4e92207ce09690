using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using System.Text.Json;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Benchmarks;

/// <summary>The right orders of 24 random posets of up to 40 steps.</summary>
internal static class CountingBenchmark
{
    public static void Run(TextWriter output)
    {
        output.WriteLine("## Counting right orders: 24 random posets of 10 to 40 steps (wanted: under 10 s and 1 GiB in all)");
        output.WriteLine();
        output.WriteLine("| poset | orders | time |");
        output.WriteLine("| --- | --- | --- |");
        var all = 0.0;
        var byFamily = new Dictionary<string, List<(double Steps, double Time)>>();
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "linear-extension-counts.jsonl")))
        {
            var poset = JsonDocument.Parse(line).RootElement;
            var grader = GraderOf(poset);
            var count = BigInteger.Zero;
            var (time, _) = Measure.Median(() => count = RightOrderDraw.Of(grader).Accepted.Count, 1, 3);
            if (count.ToString(CultureInfo.InvariantCulture) != poset.GetProperty("count").GetString())
                throw new InvalidOperationException("The count is wrong.");
            all += time;
            if (!byFamily.TryGetValue(poset.GetProperty("family").GetString()!, out var points)) byFamily.Add(poset.GetProperty("family").GetString()!, points = []);
            points.Add((poset.GetProperty("n").GetInt32(), time));
            output.WriteLine($"| {poset.GetProperty("family").GetString()}, {poset.GetProperty("n").GetInt32()} | {count} | {time / 1000:0.0} ms |");
        }

        output.WriteLine();
        foreach (var (family, points) in byFamily)
            output.WriteLine($"- {family}: the time is multiplied by {Math.Exp(4 * Measure.Growth(points)):0.0} for every four steps more (fitted).");
        using var self = Process.GetCurrentProcess();
        output.WriteLine();
        output.WriteLine($"In all {all / 1e6:0.00} s; the program's memory was never above {self.PeakWorkingSet64 / 1048576.0:0} MiB.");
    }

    private static Grader GraderOf(JsonElement poset)
    {
        var size = poset.GetProperty("n").GetInt32();
        var pairs = poset.GetProperty("pairs").EnumerateArray().Select(pair => (First: pair[0].GetInt32(), Then: pair[1].GetInt32())).ToArray();
        var sorted = new List<int>();
        while (sorted.Count < size)
            sorted.Add(Enumerable.Range(0, size).First(i =>
                !sorted.Contains(i) && pairs.All(pair => pair.Then != i || sorted.Contains(pair.First))));
        return Grader.For(new Procedure(new("poset"), "Poset", 1)
        {
            Steps = [.. sorted.Select(i => new Step(new($"s{i}"), $"Do {i}"))],
            Rules = [.. pairs.Select((pair, r) => new OrderRule(new($"r{r}"), [new($"s{pair.First}")], [new($"s{pair.Then}")]))],
        }).Value;
    }
}

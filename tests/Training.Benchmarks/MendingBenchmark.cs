namespace Training.Benchmarks;

/// <summary>Long answers, and how the time grows with their length.</summary>
internal static class MendingBenchmark
{
    private static readonly int[] Sizes = [125, 250, 500, 1000, 2000];

    public static void Run(TextWriter output)
    {
        output.WriteLine("## Grading and mending long answers (wanted: at most 20 ms for 1 000 steps)");
        output.WriteLine();
        output.WriteLine("| steps | a tenth moved | kept | in any order | kept |");
        output.WriteLine("| --- | --- | --- | --- | --- |");
        var (moved, shuffled) = (new List<(double, double)>(), new List<(double, double)>());
        foreach (var size in Sizes)
        {
            var grader = Jobs.Grader(size);
            var (few, all) = (Jobs.Wrong(grader, size / 10, 7), Jobs.Shuffled(grader, 7));
            var (fewTime, _) = Measure.Median(() => grader.Grade(few), 5, 31);
            var (allTime, _) = Measure.Median(() => grader.Grade(all), 5, 31);
            moved.Add((size, fewTime));
            shuffled.Add((size, allTime));
            output.WriteLine($"| {size} | {fewTime / 1000:0.00} ms | {grader.Grade(few).Value.Kept} | {allTime / 1000:0.00} ms | {grader.Grade(all).Value.Kept} |");
        }

        output.WriteLine();
        output.WriteLine($"The time grows as the number of steps to the power of {Measure.GrowthExponent(moved):0.00} and {Measure.GrowthExponent(shuffled):0.00}.");
    }
}

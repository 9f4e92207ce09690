using Training.Sequencing;
using Training.Sequencing.Answers;

namespace Training.Benchmarks;

/// <summary>One answer of twenty steps.</summary>
internal static class GradingBenchmark
{
    public static void Run(TextWriter output)
    {
        output.WriteLine("## Grading an answer of 20 steps (wanted: at most 20 µs and 8 KiB)");
        output.WriteLine();
        output.WriteLine("| answer | findings | time | memory |");
        output.WriteLine("| --- | --- | --- | --- |");
        var (grader, isolating) = (Jobs.Grader(20), Jobs.Isolating());
        foreach (var (name, answer, by) in new[]
        {
            ("right", Jobs.Right(grader), grader),
            ("one step moved, a decoy, a short wait", Jobs.Wrong(grader, 1, 5), grader),
            ("five steps moved, a decoy, a short wait", Jobs.Wrong(grader, 5, 3), grader),
            ("in any order", Jobs.Shuffled(grader, 1), grader),
            ("the chassis isolated rightly (17 steps)", Jobs.Isolated(isolating, isWrong: false), isolating),
            ("the chassis isolated before the wait, and the proof forgotten", Jobs.Isolated(isolating, isWrong: true), isolating),
        })
        {
            Bench(output, name, by, answer);
        }

        var (rights, wrongs) = (new List<(double, double)>(), new List<(double, double)>());
        foreach (var size in new[] { 10, 20, 40, 80 })
        {
            var sized = Jobs.Grader(size);
            var (right, wrong) = (Jobs.Right(sized), Jobs.Shuffled(sized, 1));
            rights.Add((size, Measure.Median(() => sized.Grade(right), 5_000, 101, 50).Microseconds));
            wrongs.Add((size, Measure.Median(() => sized.Grade(wrong), 5_000, 101, 50).Microseconds));
        }

        output.WriteLine();
        output.WriteLine($"From 10 to 80 steps the time of a right answer grows as their number to the power of {Measure.GrowthExponent(rights):0.00}, that of one in any order to the power of {Measure.GrowthExponent(wrongs):0.00}.");
    }

    private static void Bench(TextWriter output, string name, Grader grader, Answer answer)
    {
        var (time, bytes) = Measure.Median(() => grader.Grade(answer), 20_000, 301, 100);
        output.WriteLine($"| {name} | {grader.Grade(answer).Value.Findings.Count} | {time:0.00} µs | {bytes / 1024:0.00} KiB |");
    }
}

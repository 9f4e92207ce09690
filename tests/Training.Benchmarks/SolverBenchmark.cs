using System.Diagnostics;
using Training.Sequencing.Oracle.Tests;
using Training.Sequencing.Tests.Generating;

namespace Training.Benchmarks;

/// <summary>The same optimum by a general constraint solver (Google OR-Tools, CP-SAT), on one worker.</summary>
internal static class SolverBenchmark
{
    private const int Answers = 9;

    public static void Run(TextWriter output)
    {
        output.WriteLine("## The same optimum by a constraint solver (wanted: the engine at least 100 times faster)");
        output.WriteLine();
        output.WriteLine("CP-SAT, one worker; the engine's time is that of a whole verdict. Only answers whose optimum the solver proves count.");
        output.WriteLine();
        output.WriteLine("| steps | proven | solver | engine | ratio |");
        output.WriteLine("| --- | --- | --- | --- | --- |");
        var (solvers, engines) = (new List<(double, double)>(), new List<(double, double)>());
        foreach (var size in new[] { 10, 20, 40 })
        {
            var grader = Jobs.Grader(size);
            var (solver, engine) = (new List<double>(), new List<double>());
            for (var seed = 1; seed <= Answers; seed++)
            {
                var answer = Jobs.Wrong(grader, size / 4, seed);
                var orders = RightOrders.For(grader.Procedure, null, answer.Entries.Select(entry => entry.Step));
                SolvedMend.Kept(grader.Procedure, orders, answer);
                var start = Stopwatch.GetTimestamp();
                var kept = SolvedMend.Kept(grader.Procedure, orders, answer);
                var time = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
                if (kept is null) continue;
                if (kept != grader.Grade(answer).Value.Kept) throw new InvalidOperationException("The engine's mend is not the best.");
                solver.Add(time);
                engine.Add(Measure.Median(() => grader.Grade(answer), 20_000, 31, 20).Microseconds);
            }

            var (theirs, ours) = (Measure.MedianOf([.. solver]), Measure.MedianOf([.. engine]));
            solvers.Add((size, theirs));
            engines.Add((size, ours));
            output.WriteLine($"| {size} | {solver.Count} of {Answers} | {theirs / 1000:0.00} ms | {ours / 1000:0.000} ms | {theirs / ours:0} |");
        }

        output.WriteLine();
        output.WriteLine($"The solver's time grows as the number of steps to the power of {Measure.GrowthExponent(solvers):0.00}, the engine's to the power of {Measure.GrowthExponent(engines):0.00}.");
    }
}

using System.Globalization;
using Training.Benchmarks;
using Training.Benchmarks.Fuzzing;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["fuzz", .. var numbers])
{
    long[] given = [.. numbers.Select(number => long.Parse(number, CultureInfo.InvariantCulture))];
    return new FuzzRun(given.ElementAtOrDefault(2), given.ElementAtOrDefault(0), given.ElementAtOrDefault(1), Console.Out).Run();
}

Machine.Describe(Console.Out);
(string Name, Action<TextWriter> Run)[] benchmarks =
[
    ("grading", GradingBenchmark.Run),
    ("mending", MendingBenchmark.Run),
    ("solver", SolverBenchmark.Run),
    ("counting", CountingBenchmark.Run),
    ("answers", AnswersBenchmark.Run),
    ("coverage", CoverageBenchmark.Run),
    ("results", ResultsBenchmark.Run),
    ("drafts", DraftBenchmark.Run),
    ("papers", PapersBenchmark.Run),
];
foreach (var (name, run) in benchmarks)
{
    if (args.Length > 0 && !args.Contains(name)) continue;
    Console.Out.WriteLine();
    run(Console.Out);
    Console.Out.Flush();
}

Console.Out.WriteLine();
Console.Out.WriteLine($"Load at the end: {Machine.Load}.");
return 0;

using System.Globalization;
using Training.Benchmarks;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
Machine.Describe(Console.Out);
(string Name, Action<TextWriter> Run)[] benchmarks =
[
    ("grading", GradingBenchmark.Run),
    ("mending", MendingBenchmark.Run),
    ("solver", SolverBenchmark.Run),
    ("counting", CountingBenchmark.Run),
    ("answers", AnswersBenchmark.Run),
    ("coverage", CoverageBenchmark.Run),
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

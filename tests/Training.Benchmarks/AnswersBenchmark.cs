using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Benchmarks;

/// <summary>A hundred thousand answers by the command line, in a process of its own from start to end.</summary>
internal static class AnswersBenchmark
{
    private const int Answers = 100_000;
    private const int Runs = 3;

    public static void Run(TextWriter output)
    {
        output.WriteLine("## 100 000 answers of 20 steps by `training grade --answers` (wanted: under 5 s)");
        output.WriteLine();
        var folder = Directory.CreateTempSubdirectory("training-answers-").FullName;
        try
        {
            var grader = Jobs.Grader(20);
            var (procedure, answers) = (Path.Combine(folder, "job.json"), Path.Combine(folder, "answers.jsonl"));
            File.WriteAllText(procedure, Written(grader.Procedure));
            using (var writer = new StreamWriter(answers, append: false, new UTF8Encoding(false)))
                for (var a = 0; a < Answers; a++)
                    writer.WriteLine(AnswerJson.Write(a % 2 == 0 ? Jobs.Right(grader) : Jobs.Wrong(grader, 3, a)));
            var times = new double[Runs];
            for (var run = 0; run < Runs; run++) times[run] = Time(procedure, answers);
            output.WriteLine($"{Measure.MedianOf(times):0.00} s with the start of the program and the writing of all verdicts; every second answer is wrong.");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static double Time(string procedure, string answers)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Training.Cli.dll"), "grade", procedure, "--answers", answers])
        {
            RedirectStandardOutput = true,
        };
        var clock = Stopwatch.GetTimestamp();
        using var process = Process.Start(start)!;
        // The verdicts are only counted: to read them here would take time from the program that is measured.
        var (lines, read, bytes) = (0, 0, new byte[1 << 16]);
        while ((read = process.StandardOutput.BaseStream.Read(bytes)) > 0) lines += bytes.AsSpan(0, read).Count((byte)'\n');
        process.WaitForExit();
        var time = Stopwatch.GetElapsedTime(clock).TotalSeconds;
        return process.ExitCode == 0 && lines == Answers
            ? time
            : throw new InvalidOperationException($"The command line ended with {process.ExitCode} after {lines} verdicts.");
    }

    /// <summary>The procedure as a file: JSON is YAML, too.</summary>
    private static string Written(Procedure procedure) => JsonSerializer.Serialize(new Dictionary<string, object>
    {
        ["id"] = procedure.Id.Value,
        ["title"] = procedure.Title,
        ["revision"] = procedure.Revision,
        ["facts"] = procedure.Facts.ToDictionary(fact => fact.Id.Value, fact => fact.Values.Select(value => value.Value)),
        ["steps"] = procedure.Steps.Select(step => Filled(
            ("id", step.Id.Value), ("do", step.Do), ("wait", step.IsWait ? true : null),
            ("takes", step.Takes > Duration.Zero ? step.Takes.ToString() : null), ("sets", Settings(step.Sets)))),
        ["decoys"] = procedure.Decoys.Select(decoy => Filled(("id", decoy.Id.Value), ("do", decoy.Do))),
        ["rules"] = procedure.Rules.Select(rule => rule switch
        {
            OrderRule order => Filled(("id", rule.Id.Value), ("first", order.First.Select(id => id.Value)),
                ("then", order.Then.Select(id => id.Value)), ("at-least", order.AtLeast?.ToString()), ("because", rule.Because), ("otherwise", rule.Otherwise)),
            StateRule state => Filled(("id", rule.Id.Value), ("step", state.Step.Value),
                ("only-while", Settings(state.OnlyWhile)), ("because", rule.Because), ("otherwise", rule.Otherwise)),
            _ => throw new InvalidOperationException("There is no such rule."),
        }),
    });

    private static Dictionary<string, string>? Settings(IReadOnlyList<FactSetting> settings) =>
        settings.Count == 0 ? null : settings.ToDictionary(setting => setting.Fact.Value, setting => setting.Value.Value);

    private static Dictionary<string, object> Filled(params (string Key, object? Value)[] parts) =>
        parts.Where(part => part.Value is not null).ToDictionary(part => part.Key, part => part.Value!);
}

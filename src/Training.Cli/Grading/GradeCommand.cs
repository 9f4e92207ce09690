using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Training.Content;
using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Cli.Grading;

/// <summary>Grades answers by a procedure's file: one answer, or one a line.</summary>
internal sealed record GradeCommand(string Procedure, string Answers, bool OneALine, VariantId? Variant)
{
    private const int LinesABatch = 1_000;
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Outcome<GradeCommand, UsageFault> Parse(IReadOnlyList<string> words)
    {
        string? procedure = null;
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        for (var i = 0; i < words.Count; i++)
        {
            var word = words[i];
            if (word is "--answer" or "--answers" or "--variant")
            {
                if (++i == words.Count) return new UsageFault($"{word} needs a value behind it.");
                if (!options.TryAdd(word, words[i])) return new UsageFault($"{word} is there twice.");
            }
            else if (word.StartsWith('-')) return new UsageFault($"There is no option \"{word}\".");
            else if (procedure is not null) return new UsageFault($"grade takes one procedure; \"{word}\" is one too many.");
            else procedure = word;
        }

        if (procedure is null) return new UsageFault("Name the procedure's file.");
        if (options.ContainsKey("--answer") == options.ContainsKey("--answers"))
            return new UsageFault("Name either one --answer or a file of --answers.");
        var oneALine = options.TryGetValue("--answers", out var answers);
        return new GradeCommand(
            procedure,
            answers ?? options["--answer"],
            oneALine,
            options.TryGetValue("--variant", out var variant) ? new VariantId(variant) : null);
    }

    public int Run(TextReader input, TextWriter output, TextWriter errors)
    {
        var file = InputFile.Try(Procedure, () => ContentFolder.ReadFile(Procedure, Procedure));
        if (!file.IsOk) return Report([file.Fault], errors);
        var reading = ProcedureFile.ReadGrader(file.Value, Variant);
        if (reading.Grader is not { } grader) return Report(reading.Problems, errors);
        if (Answers == "-") return Grade(grader, input, output, errors);
        var code = InputFile.Try(Answers, () =>
        {
            using var reader = new StreamReader(Answers, Encoding.UTF8);
            return Grade(grader, reader, output, errors);
        });
        return code.Match(code => code, problem => Report([problem], errors));
    }

    private int Grade(Grader grader, TextReader answers, TextWriter output, TextWriter errors) =>
        OneALine
            ? GradeLines(grader, answers, output, errors)
            : Tell(GradeOne(grader, answers.ReadToEnd(), 1), output, errors);

    private int GradeLines(Grader grader, TextReader answers, TextWriter output, TextWriter errors)
    {
        var code = ExitCode.Done;
        var batch = new List<(int Number, string Json)>(LinesABatch);
        for (var number = 1; answers.ReadLine() is { } line; number++)
        {
            if (string.IsNullOrWhiteSpace(line)) continue;
            batch.Add((number, line));
            if (batch.Count == LinesABatch) GradeBatch();
        }

        GradeBatch();
        return code;

        // Answers do not know of each other: they are graded side by side and told in their order.
        void GradeBatch()
        {
            var graded = new Graded[batch.Count];
            Parallel.For(0, batch.Count, at => graded[at] = GradeOne(grader, batch[at].Json, batch[at].Number));
            foreach (var one in graded) code = Math.Max(code, Tell(one, output, errors));
            batch.Clear();
        }
    }

    private Graded GradeOne(Grader grader, string json, int line)
    {
        var answer = AnswerJson.Parse(json);
        var verdict = answer.IsOk ? grader.Grade(answer.Value) : answer.Fault;
        return verdict.IsOk
            ? new(VerdictJson.Write(verdict.Value), null)
            : new(
                JsonSerializer.Serialize(new { error = verdict.Fault.Sentence }, Plain),
                new(Answers, line, 1, ProblemLevel.Error, verdict.Fault.Sentence));
    }

    private static int Tell(Graded graded, TextWriter output, TextWriter errors)
    {
        output.WriteLine(graded.Json);
        if (graded.Problem is null) return ExitCode.Done;
        errors.WriteLine(graded.Problem);
        return ExitCode.AtFault;
    }

    private static int Report(IEnumerable<ContentProblem> problems, TextWriter errors)
    {
        foreach (var problem in problems) errors.WriteLine(problem);
        return ExitCode.AtFault;
    }

    private readonly record struct Graded(string Json, ContentProblem? Problem);
}

using System.Buffers;
using System.Collections.Concurrent;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Threading.Channels;
using Training.Content;
using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Cli.Grading;

/// <summary>Grades answers by a procedure's file: one answer, or one a line.</summary>
internal sealed record GradeCommand(string Procedure, string Answers, bool OneALine, VariantId? Variant)
{
    private const int LinesABatch = 200;
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
        var answers = InputFile.Try(Answers, () => new StreamReader(Answers, Encoding.UTF8));
        if (!answers.IsOk) return Report([answers.Fault], errors);
        using (answers.Value) return Grade(grader, answers.Value, output, errors);
    }

    private int Grade(Grader grader, TextReader answers, TextWriter output, TextWriter errors)
    {
        if (OneALine) return GradeLines(grader, answers, output, errors).GetAwaiter().GetResult();
        var batch = new GradedBatch();
        GradeOne(grader, answers.ReadToEnd(), 1, batch);
        return Tell(batch, output, errors);
    }

    /// <summary>
    /// Grades a line as an answer of its own. Lines are read, graded and told side by side; they are told in the order in which
    /// they were read, and as only so many are under way, memory is bounded however long the file is.
    /// </summary>
    private async Task<int> GradeLines(Grader grader, TextReader answers, TextWriter output, TextWriter errors)
    {
        var underWay = Channel.CreateBounded<Task<GradedBatch>>(2 * Environment.ProcessorCount);
        var told = new ConcurrentBag<GradedBatch>();
        var telling = Task.Run(() => TellAll(underWay, told, output, errors));
        try
        {
            foreach (var lines in Lines(answers).Chunk(LinesABatch))
                await underWay.Writer.WriteAsync(Task.Run(() => GradeAll(grader, lines, told.TryTake(out var again) ? again : new())));
        }
        catch (ChannelClosedException)
        {
            // Nobody can be told any more; why is said below.
        }
        finally
        {
            underWay.Writer.TryComplete();
            await Task.WhenAny(telling);
        }

        return await telling;
    }

    private GradedBatch GradeAll(Grader grader, (int Number, string Json)[] lines, GradedBatch batch)
    {
        batch.Clear();
        foreach (var (number, json) in lines) GradeOne(grader, json, number, batch);
        return batch;
    }

    private static async Task<int> TellAll(
        Channel<Task<GradedBatch>> underWay, ConcurrentBag<GradedBatch> told, TextWriter output, TextWriter errors)
    {
        try
        {
            var code = ExitCode.Done;
            await foreach (var graded in underWay.Reader.ReadAllAsync())
            {
                var batch = await graded;
                code = Math.Max(code, Tell(batch, output, errors));
                told.Add(batch);
            }

            return code;
        }
        finally
        {
            underWay.Writer.TryComplete();
        }
    }

    private static IEnumerable<(int Number, string Json)> Lines(TextReader answers)
    {
        for (var number = 1; answers.ReadLine() is { } line; number++)
            if (!string.IsNullOrWhiteSpace(line)) yield return (number, line);
    }

    private void GradeOne(Grader grader, string json, int line, GradedBatch batch)
    {
        var answer = AnswerJson.Parse(json);
        var verdict = answer.IsOk ? grader.Grade(answer.Value) : answer.Fault;
        if (verdict.IsOk) VerdictJson.Write(verdict.Value, batch.Lines);
        else
        {
            batch.Lines.Write(JsonSerializer.SerializeToUtf8Bytes(new { error = verdict.Fault.Sentence }, Plain));
            batch.Problems.Add(new(Answers, line, 1, ProblemLevel.Error, verdict.Fault.Sentence));
        }

        batch.Lines.Write("\n"u8);
    }

    private static int Tell(GradedBatch batch, TextWriter output, TextWriter errors)
    {
        if (output is StreamWriter { Encoding: UTF8Encoding } stream)
        {
            // What is UTF-8 already need not become text and UTF-8 again: half a gigabyte for 100 000 verdicts.
            stream.Flush();
            stream.BaseStream.Write(batch.Lines.WrittenSpan);
        }
        else output.Write(Encoding.UTF8.GetString(batch.Lines.WrittenSpan));

        return batch.Problems.Count == 0 ? ExitCode.Done : Report(batch.Problems, errors);
    }

    private static int Report(IEnumerable<ContentProblem> problems, TextWriter errors)
    {
        foreach (var problem in problems) errors.WriteLine(problem);
        return ExitCode.AtFault;
    }

    /// <summary>The verdicts on some answers as UTF-8, one a line, and what was wrong with answers that have none.</summary>
    private sealed class GradedBatch
    {
        public ArrayBufferWriter<byte> Lines { get; } = new();

        public List<ContentProblem> Problems { get; } = [];

        public void Clear()
        {
            Lines.ResetWrittenCount();
            Problems.Clear();
        }
    }
}

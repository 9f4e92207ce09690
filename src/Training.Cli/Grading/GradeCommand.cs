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
    private const int SignsABatch = 1_000_000;
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
            else if (InputFile.IsOption(word)) return new UsageFault($"There is no option \"{word}\".");
            else if (procedure is not null) return new UsageFault($"grade takes one procedure; \"{word}\" is one too many.");
            else procedure = word;
        }

        if (procedure is null) return new UsageFault("Name the procedure's file.");
        if (options.ContainsKey("--answer") == options.ContainsKey("--answers"))
            return new UsageFault("Name either one --answer or a file of --answers.");
        var oneALine = options.TryGetValue("--answers", out var answers);
        answers ??= options["--answer"];
        if (procedure == InputFile.Dash && answers == InputFile.Dash)
            return new UsageFault("Standard input is either the procedure or the answers: name a file for one of them.");
        return new GradeCommand(
            procedure,
            answers,
            oneALine,
            options.TryGetValue("--variant", out var variant) ? new VariantId(variant) : null);
    }

    public int Run(TextReader input, TextWriter output, TextWriter errors)
    {
        var file = InputFile.Content(Procedure, input);
        if (!file.IsOk) return Report([file.Fault], errors);
        var reading = ProcedureFile.ReadGrader(file.Value, Variant);
        if (reading.Grader is not { } grader) return Report(reading.Problems, errors);
        return InputFile.Read(Answers, input, answers => Grade(grader, answers, output, errors))
            .Match(code => code, problem => Report([problem], errors));
    }

    private int Grade(Grader grader, TextReader answers, TextWriter output, TextWriter errors)
    {
        if (OneALine) return GradeLines(grader, answers, output, errors).GetAwaiter().GetResult();
        var batch = new GradedBatch();
        GradeOne(grader, new(1, AnswerLines.Whole(answers)), batch);
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
            foreach (var lines in Batches(new AnswerLines(answers).Read()))
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

    private GradedBatch GradeAll(Grader grader, List<AnswerLine> lines, GradedBatch batch)
    {
        batch.Clear();
        foreach (var line in lines) GradeOne(grader, line, batch);
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

    /// <summary>
    /// Lines that are graded together. Long ones make small batches, so that what is under way stays within bounds; one that
    /// is too long is told at once, as it may not end.
    /// </summary>
    private static IEnumerable<List<AnswerLine>> Batches(IEnumerable<AnswerLine> lines)
    {
        List<AnswerLine> batch = new(LinesABatch);
        var length = 0;
        foreach (var line in lines)
        {
            batch.Add(line);
            length += line.Json?.Length ?? SignsABatch;
            if (batch.Count < LinesABatch && length < SignsABatch) continue;
            yield return batch;
            (batch, length) = (new(LinesABatch), 0);
        }

        if (batch.Count > 0) yield return batch;
    }

    private void GradeOne(Grader grader, AnswerLine line, GradedBatch batch)
    {
        JsonPlace? brokenAt = null;
        var answer = line.Json is null ? AnswerJson.TooLong : AnswerJson.Parse(line.Json, out brokenAt);
        var verdict = answer.IsOk ? grader.Grade(answer.Value) : answer.Fault;
        if (verdict.IsOk) VerdictJson.Write(verdict.Value, batch.Lines);
        else
        {
            batch.Lines.Write(JsonSerializer.SerializeToUtf8Bytes(new { error = verdict.Fault.Sentence }, Plain));
            var (inner, column) = brokenAt ?? new(1, 1);
            batch.Problems.Add(new(Answers, line.Number + inner - 1, column, ProblemLevel.Error, verdict.Fault.Sentence));
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

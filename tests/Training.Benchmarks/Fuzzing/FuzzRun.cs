using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Training.Content;
using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Benchmarks.Fuzzing;

/// <summary>
/// Feeds spoilt procedures and wild answers to the reader and the grader and holds every result to the laws: nothing is
/// thrown, nothing hangs, accepted ⇔ no change ⇔ 100 points, what is kept stays in bounds, the mended answer is accepted
/// unless a gap has nothing that could fill it, and a verdict's JSON parses. An input is one text that is read or one
/// answer that is graded. The same seed gives the same run.
/// </summary>
internal sealed class FuzzRun(long seed, long texts, long answers, TextWriter output)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private readonly SeededDraw lots = new(seed);
    private readonly Dictionary<string, int> broken = [];
    private readonly List<Judge> graders = [];
    private long readable, gradable, verdicts, refused, accepted;

    public int Run()
    {
        var sources = ContentFolder.Read(Shipped.Content()).Where(file => file.Path.StartsWith("procedures/", StringComparison.Ordinal) && file.Path.Count(c => c == '.') == 1).ToList();
        var watch = Stopwatch.StartNew();
        foreach (var source in sources) Read(source.Text);
        for (var text = 0L; text < texts; text++) Read(Spoilt(sources[lots.Below(sources.Count)].Text));
        output.WriteLine($"Texts: {texts} read in {watch.Elapsed.TotalMinutes:0.0} min, {readable} were procedures, {gradable} could be graded by.");
        watch.Restart();
        for (var answer = 0L; answer < answers; answer++) Grade(graders[lots.Below(graders.Count)], answer % 100 == 0);
        output.WriteLine($"Answers: {answers} in {watch.Elapsed.TotalMinutes:0.0} min, {verdicts} verdicts ({accepted} accepted), {refused} refused with a sentence.");
        output.WriteLine(broken.Count == 0 ? "No law was broken." : string.Join('\n', broken.Select(law => $"BROKEN {law.Value} times: {law.Key}")));
        return broken.Count == 0 ? 0 : 1;
    }

    private void Read(string text)
    {
        Guard("reading a procedure", () => text, () =>
        {
            var file = new ContentFile("fuzz.yaml", text);
            var reading = ProcedureFile.Read(file);
            if (reading.Procedure is not { } procedure)
            {
                Law(reading.Problems.Count > 0, "a text that is no procedure has a problem", () => text);
                return;
            }

            readable++;
            Law(reading.Problems.All(problem => problem is { Line: > 0, Column: > 0 }), "a problem has a place", () => text);
            var made = Grader.For(procedure, procedure.Variants.Count > 0 ? procedure.Variants[lots.Below(procedure.Variants.Count)] : null);
            if (!made.IsOk) return;
            gradable++;
            // The graders of the second half: the shipped ones first, then spoilt ones in turn.
            var judge = new Judge(made.Value, text);
            if (graders.Count < 400) graders.Add(judge);
            else graders[60 + lots.Below(340)] = judge;
            Grade(judge, withJson: true);
        });
    }

    private void Grade(Judge judge, bool withJson)
    {
        var grader = judge.Grader;
        var answer = Wild(grader);
        string Input() => $"{AnswerText(answer)}\n{grader.Variant}\n\n{judge.Text}";
        Guard("grading", Input, () =>
        {
            var graded = grader.Grade(answer);
            if (!graded.IsOk)
            {
                refused++;
                Law(graded.Fault.Sentence.Length > 10, "a refusal has a sentence", Input);
                return;
            }

            verdicts++;
            var verdict = graded.Value;
            if (verdict.Accepted) accepted++;
            Law(verdict.Accepted == (verdict.Cost == 0) && verdict.Accepted == (verdict.Score == 100m), "accepted ⇔ cost 0 ⇔ score 100", Input);
            Law(verdict.Score is >= 0 and <= 100, "the score lies between 0 and 100", Input);
            Law(verdict.Kept >= 0 && verdict.Kept <= answer.Entries.Count, "kept lies within the answer", Input);
            Law(verdict.Safe || !verdict.Accepted, "what is accepted is safe", Input);
            if (answer.Entries.All(entry => entry.Observed is null)) CheckNearest(grader, answer, verdict, Input);
            if (!withJson) return;
            using var json = JsonDocument.Parse(VerdictJson.Write(verdict));
            Law(json.RootElement.GetProperty("accepted").GetBoolean() == verdict.Accepted, "a verdict's JSON parses", Input);
            var again = AnswerJson.Parse(AnswerJson.Write(answer));
            Law(again.IsOk && again.Value.Entries.SequenceEqual(answer.Entries), "an answer's JSON reads back", Input);
        });
    }

    private void CheckNearest(Grader grader, Answer answer, Verdict verdict, Func<string> input)
    {
        var nearest = grader.Grade(new(verdict.Nearest) { Start = answer.Start });
        Law(nearest.IsOk, "the mended answer can be graded", input);
        if (!nearest.IsOk || nearest.Value.Accepted) return;
        // Only a gap that holds no wait step cannot be filled by waiting.
        var gaps = nearest.Value.Findings.All(finding => finding.Kind == FindingKind.TooSoon && !Enumerable
            .Range(finding.Places[0], Math.Max(0, finding.Places[1] - finding.Places[0] - 1))
            .Any(place => grader.Procedure.Steps.Any(step => step.IsWait && step.Id == verdict.Nearest[place].Step)));
        Law(gaps, "the mended answer is accepted unless a gap has nothing that could fill it", input);
    }

    private Answer Wild(Grader grader)
    {
        var procedure = grader.Procedure;
        var steps = procedure.Steps.Where(step => step.Variants.Count == 0 || (grader.Variant is { } kind && step.Variants.Contains(kind))).ToList();
        var observed = lots.Below(12) == 0;
        var entries = steps.Where(step => !step.IsOptional || lots.Below(2) == 0).Select(step => Entry(step.Id, step.IsWait)).ToList();
        for (var change = lots.Below(7); change > 0 && entries.Count > 0; change--)
        {
            var at = lots.Below(entries.Count);
            switch (lots.Below(6))
            {
                case 0: entries.RemoveAt(at); break;
                case 1: entries.Insert(at, entries[lots.Below(entries.Count)]); break;
                case 2 when procedure.Decoys.Count > 0: entries.Insert(at, new(procedure.Decoys[lots.Below(procedure.Decoys.Count)].Id)); break;
                case 3 when lots.Below(10) == 0: entries.Insert(at, Entry(new(lots.Below(2) == 0 ? "" : "nobody-knows-it"), lots.Below(2) == 0)); break;
                case 4: entries.Insert(at, Entry(procedure.Steps[lots.Below(procedure.Steps.Count)].Id, false)); break;
                default:
                    var moved = entries[at];
                    entries.RemoveAt(at);
                    entries.Insert(lots.Below(entries.Count + 1), moved);
                    break;
            }
        }

        if (observed) entries = Timed(entries);
        var started = lots.Below(6) == 0 ? lots.Below(entries.Count + 1) : 0;
        return new([.. entries.Skip(started)]) { Start = [.. entries.Take(started)] };
    }

    private Entry Entry(StepId id, bool isWait) => new(id)
    {
        Stated = isWait || lots.Below(200) == 0
            ? Duration.FromSeconds(lots.Below(8) switch { 0 => 0, 1 => Duration.Longest.Seconds, 2 => 0.000000001m, _ => lots.Below(400) })
            : null,
    };

    private List<Entry> Timed(List<Entry> entries)
    {
        var clock = 0m;
        return [.. entries.Select(entry =>
        {
            clock += lots.Below(60);
            Times.TryCreate(Duration.FromSeconds(clock), Duration.FromSeconds(clock + lots.Below(90)), out var times);
            return entry with { Stated = lots.Below(50) == 0 ? entry.Stated : null, Observed = lots.Below(100) == 0 ? null : times };
        })];
    }

    private string Spoilt(string text)
    {
        var builder = new StringBuilder(text);
        for (var change = 1 + lots.Below(4); change > 0 && builder.Length > 2; change--)
        {
            var at = lots.Below(builder.Length);
            var length = Math.Min(1 + lots.Below(30), builder.Length - at);
            switch (lots.Below(8))
            {
                case 0: builder.Remove(at, length); break;
                case 1: builder.Insert(at, builder.ToString(at, length)); break;
                case 2: builder.Insert(at, Odd[lots.Below(Odd.Length)]); break;
                case 3: builder[at] = (char)lots.Below(lots.Below(4) == 0 ? 0xFFFF : 128); break;
                default: SwapLinesOrWords(builder); break;
            }
        }

        return builder.ToString();
    }

    /// <summary>What keeps most texts readable: two lines change places, or one id stands where another stood.</summary>
    private void SwapLinesOrWords(StringBuilder builder)
    {
        var lines = builder.ToString().Split('\n');
        var (a, b) = (lots.Below(lines.Length), lots.Below(lines.Length));
        if (lots.Below(3) == 0)
        {
            (lines[a], lines[b]) = (lines[b], lines[a]);
        }
        else
        {
            var words = lines[a].Split(' ');
            var others = lines[b].Split(' ');
            words[lots.Below(words.Length)] = others[lots.Below(others.Length)];
            lines[a] = string.Join(' ', words);
        }

        builder.Clear().Append(string.Join('\n', lines));
    }

    private void Guard(string what, Func<string> input, Action act)
    {
        // Time of the processor: on a machine that others use, an input that waits for its turn does not hang.
        var begun = Environment.CpuUsage.TotalTime;
        try
        {
            act();
        }
#pragma warning disable CA1031 // Whatever is thrown is what is looked for.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Law(false, $"{what} throws {fault.GetType().Name} at {fault.StackTrace?.Split('\n')[0].Trim()}", input);
        }

        if (Environment.CpuUsage.TotalTime - begun > Patience) Law(false, $"{what} takes more than {Patience.TotalSeconds} s", input);
    }

    private void Law(bool holds, string law, Func<string> input)
    {
        if (holds) return;
        broken[law] = broken.GetValueOrDefault(law) + 1;
        if (broken[law] > 3) return;
        var file = Path.Combine(Path.GetTempPath(), $"fuzz-{broken.Count}-{broken[law]}.txt");
        File.WriteAllText(file, input());
        output.WriteLine($"{law}: see {file}");
    }

    private static string AnswerText(Answer answer) => string.Join(' ', answer.Start.Select(entry => $"[{entry}]").Concat(answer.Entries.Select(entry => $"{entry}")));

    /// <summary>What is graded by, with the text that it was read from.</summary>
    private sealed record Judge(Grader Grader, string Text);

    private static readonly string[] Odd =
        ["\t", ": ", "- ", "{", "}", "[", "]", "'", "\"", "&a ", "*a", "!x ", "# ", "---\n", "\n", "\u0000", "\uD800", "999999999999 s", "-1 s", "1e9 s", "null", "~", "off", "true"];
}

using System.Globalization;
using System.Text.Json;

namespace Training.Cli.Tests.Grading;

public sealed class GradeTests : CommandLine
{
    private const string Right = """[{"step":"key-off"},{"step":"rest","seconds":60},{"step":"lift-tray"},{"step":"hook"}]""";
    private const string Wrong = """[{"step":"rest"},{"step":"key-off"},{"step":"lift-tray"},{"step":"hook"}]""";
    private static readonly string Procedure = Path.Combine(Data, "good", "procedures", "change-relay-tray.yaml");

    private static JsonElement Json(string text) => JsonDocument.Parse(text).RootElement;

    [Fact]
    public void A_right_answer_is_accepted()
    {
        var outcome = Run("grade", Procedure, "--answer", Write("a.json", Right), "--variant", "tipper");
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.True(Json(Assert.Single(outcome.Lines)).GetProperty("accepted").GetBoolean());
    }

    [Fact]
    public void Without_a_variant_the_first_is_taken()
    {
        var outcome = Run("grade", Procedure, "--answer", Write("a.json", Right));
        Assert.Equal("stow-boom", Json(outcome.Output).GetProperty("mend").GetProperty("add")[0].GetString());
    }

    [Fact]
    public void A_wrong_answer_is_graded_and_no_fault_of_the_command()
    {
        var outcome = Run("grade", Procedure, "--answer", Write("a.json", Wrong), "--variant", "tipper");
        Assert.Equal(ExitCode.Done, outcome.Code);
        Assert.False(Json(outcome.Output).GetProperty("accepted").GetBoolean());
    }

    [Fact]
    public void An_answer_may_go_on_from_a_start()
    {
        var answer = Write("a.json", """{"start":["key-off",{"step":"rest","seconds":60}],"entries":[{"step":"lift-tray"},{"step":"bench"}]}""");
        Assert.True(Json(Run("grade", Procedure, "--answer", answer, "--variant", "tipper").Output).GetProperty("accepted").GetBoolean());
    }

    [Theory]
    [InlineData("""[{"step":"nothing"}]""")]
    [InlineData("""[{"step":"rest","seconds":-1}]""")]
    [InlineData("""[{"step":"key-off","seconds":5}]""")]
    [InlineData("""{"start":["lift-tray"],"entries":[]}""")]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("7")]
    public void An_answer_that_cannot_be_graded_is_refused_with_a_sentence(string answer)
    {
        var path = Write("a.json", answer);
        var outcome = Run("grade", Procedure, "--answer", path, "--variant", "tipper");
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        var sentence = Json(Assert.Single(outcome.Lines)).GetProperty("error").GetString();
        Assert.Equal($"{path}:1:1: error: {sentence}\n", outcome.Errors);
    }

    [Fact]
    public void Where_an_answer_is_no_JSON_its_line_and_column_are_told()
    {
        var one = Write("a.json", "[\n  {\"step\": \"key-off\"},\n  {\"step\": }\n]\n");
        Assert.StartsWith($"{one}:3:12: error: ", Run("grade", Procedure, "--answer", one).Errors, StringComparison.Ordinal);
        var many = Write("a.jsonl", $"{Right}\n\n[{{\"step\":\"ä\",}}]\n");
        Assert.StartsWith($"{many}:3:14: error: ", Run("grade", Procedure, "--answers", many).Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void A_line_that_is_longer_than_any_answer_is_refused_and_the_others_are_graded(string end)
    {
        var path = Write("a.jsonl", string.Join(end, Right, new string('x', 4_000_001), Wrong, "", Right, new string(' ', 4_000_001)));
        var outcome = Run("grade", Procedure, "--answers", path, "--variant", "tipper");
        Assert.Equal((ExitCode.AtFault, 5), (outcome.Code, outcome.Lines.Length));
        Assert.Equal([true, null, false, true, null], outcome.Lines.Select(line =>
            Json(line).TryGetProperty("accepted", out var accepted) ? accepted.GetBoolean() : (bool?)null));
        Assert.Equal($"{path}:2:1: error: The answer is too long to be read.\n{path}:6:1: error: The answer is too long to be read.\n", outcome.Errors);
    }

    [Fact]
    public void Lines_that_end_with_two_signs_are_counted_once_wherever_they_are_cut()
    {
        // The pieces in which the input comes end between the two signs, and within a line.
        var lines = string.Concat(Enumerable.Range(1, 500).Select(line => $"[{{\"step\":\"no-step-{line}\"}}]\r\n"));
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        Cli.Run(["grade", Procedure, "--answers", "-"], new InPieces(lines), output, errors);
        Assert.Equal(500, output.ToString().Count(sign => sign == '\n'));
        Assert.Contains("\n-:500:1: error: ", errors.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_without_an_end_is_refused_before_it_ends()
    {
        // Both inputs break long before their line ends: what is told by then was not kept to the end.
        using var output = new StringWriter { NewLine = "\n" };
        var code = Cli.Run(["grade", Procedure, "--answers", "-"], new EndlessLine { BreaksAfter = 20_000_000 }, output, TextWriter.Null);
        Assert.Equal((ExitCode.AtFault, 1), (code, output.ToString().Count(sign => sign == '\n')));
        using var errors = new StringWriter { NewLine = "\n" };
        code = Cli.Run(["grade", Procedure, "--answer", "-"], new EndlessLine { BreaksAfter = 20_000_000 }, TextWriter.Null, errors);
        Assert.Equal((ExitCode.AtFault, "-:1:1: error: The answer is too long to be read.\n"), (code, errors.ToString()));
    }

    [Fact]
    public void A_dash_in_place_of_the_procedure_reads_it_from_standard_input()
    {
        var outcome = RunWith(File.ReadAllText(Procedure), "grade", "-", "--answer", Write("a.json", Right), "--variant", "tipper");
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.True(Json(outcome.Output).GetProperty("accepted").GetBoolean());
        Assert.StartsWith("-:1:1: error: ", RunWith("stepps: []", "grade", "-", "--answer", Write("a.json", Right)).Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Standard_input_is_not_both_the_procedure_and_the_answers()
    {
        foreach (var option in new[] { "--answer", "--answers" })
        {
            var outcome = RunWith("", "grade", "-", option, "-");
            Assert.Equal((ExitCode.WrongUsage, ""), (outcome.Code, outcome.Output));
            Assert.StartsWith("Standard input is either", outcome.Errors, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Lists_with_nothing_in_them_and_a_group_of_one_forbid_no_grading()
    {
        var path = Write("p.json", """{"id":"p","title":"P","revision":1,"variants":[],"facts":{},"decoys":[],"rules":[],"steps":[{"id":"a","do":"A","one-of":"g","sets":{},"variants":[]}]}""");
        var outcome = Run("grade", path, "--answer", Write("a.json", """[{"step":"a"}]"""));
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.True(Json(outcome.Output).GetProperty("accepted").GetBoolean());
    }

    [Fact]
    public void One_answer_a_line_gives_one_verdict_a_line()
    {
        var outcome = Run("grade", Procedure, "--answers", Write("a.jsonl", $"{Right}\n{Wrong}\n{Right}"), "--variant", "tipper");
        Assert.Equal(ExitCode.Done, outcome.Code);
        Assert.Equal([true, false, true], outcome.Lines.Select(line => Json(line).GetProperty("accepted").GetBoolean()));
    }

    [Fact]
    public void A_refused_line_stands_in_its_place_and_the_others_are_graded()
    {
        var path = Write("a.jsonl", $"{Right}\n[{{\"step\":\"nothing\"}}]\n\n{Right}\n");
        var outcome = Run("grade", Procedure, "--answers", path, "--variant", "tipper");
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Equal(3, outcome.Lines.Length);
        Assert.True(Json(outcome.Lines[1]).TryGetProperty("error", out _));
        Assert.True(Json(outcome.Lines[2]).GetProperty("accepted").GetBoolean());
        Assert.StartsWith($"{path}:2:1: error: ", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void However_many_lines_there_are_they_are_told_in_their_order()
    {
        // Each answer is one step that names its line, and every seventh line says nothing.
        var lines = Enumerable.Range(1, 3_000).Select(line => line % 7 == 0 ? "" : $$"""[{"step":"no-step-{{line}}"}]""").ToArray();
        var run = RunWith(string.Join('\n', lines), "grade", Procedure, "--answers", "-");
        int[] told = [.. Enumerable.Range(1, 3_000).Where(line => line % 7 != 0)];
        Assert.Equal(told.Length, run.Lines.Length);
        Assert.All(told.Zip(run.Lines), pair => Assert.Contains($"no-step-{pair.First}”", pair.Second, StringComparison.Ordinal));
        var errors = run.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.All(told.Zip(errors), pair => Assert.StartsWith($"-:{pair.First}:1: error:", pair.Second, StringComparison.Ordinal));
        Assert.Equal(told.Length, errors.Length);
    }

    [Fact]
    public void Where_nobody_reads_on_the_run_ends()
    {
        using var gone = new GoneReader();
        var code = Cli.Run(["grade", Procedure, "--answers", "-"], new EndlessAnswers(), gone, TextWriter.Null);
        Assert.Equal(1, code);
    }

    [Fact]
    public void What_was_read_before_the_input_broke_is_told()
    {
        using var output = new StringWriter { NewLine = "\n" };
        var code = Cli.Run(["grade", Procedure, "--answers", "-"], new EndlessAnswers { BreaksAfter = 1_000 }, output, TextWriter.Null);
        Assert.Equal((1, 1_000), (code, output.ToString().Count(sign => sign == '\n')));
    }

    [Fact]
    public void A_dash_reads_standard_input() =>
        Assert.Equal(2, RunWith($"{Right}\n{Wrong}\n", "grade", Procedure, "--answers", "-", "--variant", "tipper").Lines.Length);

    [Fact]
    public void A_broken_procedure_is_told_with_its_place()
    {
        var path = Write("p.yaml", "id: p\ntitle: P\nrevision: 1\nstepps: []\n");
        var outcome = Run("grade", path, "--answer", Write("a.json", Right));
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Equal("", outcome.Output);
        Assert.Contains($"{path}:4:1: error: A procedure has no key \"stepps\": did you mean \"steps\"?", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_found_is_told_in_a_sentence()
    {
        var answer = Write("a.json", Right);
        foreach (var outcome in new[]
        {
            Run("grade", Path.Combine(Folder, "none.yaml"), "--answer", answer),
            Run("grade", Folder, "--answer", answer),
            Run("grade", Procedure, "--answer", Path.Combine(Folder, "none.json")),
            Run("grade", Procedure, "--answers", Folder),
            Run("grade", Procedure, "--answer", answer, "--variant", "bus-l18"),
        })
        {
            Assert.Equal(ExitCode.AtFault, outcome.Code);
            Assert.Matches(@"\A\S+:1:[0-9]+: error: .+\.\n\z|\A\S+:[0-9]+:[0-9]+: error: .+\n\z", outcome.Errors);
            Assert.Empty(outcome.Output);
        }
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("hi-IN")]
    public void The_language_of_the_machine_changes_nothing(string culture)
    {
        string[] words = ["grade", Procedure, "--answer", Write("a.json", Wrong.Replace("\"rest\"", "\"rest\",\"seconds\":12.5", StringComparison.Ordinal))];
        var here = Run(words).Output;
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(here, Run(words).Output);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private sealed class EndlessAnswers : TextReader
    {
        private int read;

        public int BreaksAfter { get; init; } = int.MaxValue;

        public override int Read(char[] buffer, int index, int count)
        {
            if (read++ >= BreaksAfter) throw new IOException("The input broke.");
            "[]\n".CopyTo(0, buffer, index, 3);
            return 3;
        }
    }

    private sealed class EndlessLine : TextReader
    {
        private long read;

        public required long BreaksAfter { get; init; }

        public override int Read(char[] buffer, int index, int count)
        {
            if ((read += count) > BreaksAfter) throw new IOException("The input broke.");
            Array.Fill(buffer, '\0', index, count);
            return count;
        }
    }

    private sealed class InPieces(string text) : TextReader
    {
        private int at;

        public override int Read(char[] buffer, int index, int count)
        {
            var length = Math.Min(text.Length - at, 1 + at % 7);
            text.CopyTo(at, buffer, index, length);
            at += length;
            return length;
        }
    }

    private sealed class GoneReader : StringWriter
    {
        public override void Write(string? value) => throw new IOException("Nobody reads on.");

        public override void WriteLine(string? value) => throw new IOException("Nobody reads on.");
    }
}

using System.Text.Json;

namespace Training.Cli.Tests.Grading;

/// <summary>The reference answers of the contract, through the command line as a stranger would send them.</summary>
public sealed class ConformanceTests : CommandLine
{
    [Fact]
    public void Every_reference_answer_gets_the_reference_verdict()
    {
        var answers = 0;
        foreach (var line in File.ReadLines(Path.Combine(Data, "engine-conformance.jsonl")))
        {
            using var document = JsonDocument.Parse(line);
            var one = document.RootElement;
            var cases = one.GetProperty("answers").EnumerateArray().ToArray();
            var procedure = Write("procedure.yaml", one.GetProperty("procedure").GetRawText());
            var file = Write("answers.jsonl", string.Join('\n', cases.Select(entry => entry.GetProperty("answer").GetRawText())));
            string[] variant = one.GetProperty("variant").GetString() is { } id ? ["--variant", id] : [];
            var outcome = Run(["grade", procedure, "--answers", file, .. variant]);
            Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
            Assert.Equal(cases.Length, outcome.Lines.Length);
            foreach (var (verdict, wanted) in outcome.Lines.Zip(cases)) AssertSame(JsonDocument.Parse(verdict).RootElement, wanted.GetProperty("expect"));
            answers += cases.Length;
        }

        Assert.Equal(360, answers);
    }

    private static void AssertSame(JsonElement verdict, JsonElement wanted)
    {
        foreach (var name in new[] { "accepted", "safe" })
            Assert.Equal(wanted.GetProperty(name).GetBoolean(), verdict.GetProperty(name).GetBoolean());
        Assert.Equal(wanted.GetProperty("kept").GetInt32(), verdict.GetProperty("kept").GetInt32());
        Assert.Equal(wanted.GetProperty("score").GetDecimal(), verdict.GetProperty("score").GetDecimal());
        var mend = verdict.GetProperty("mend");
        Assert.Equal(wanted.GetProperty("moves").GetInt32(), mend.GetProperty("moves").GetArrayLength());
        Assert.Equal(wanted.GetProperty("drops").GetInt32(), mend.GetProperty("drop").GetArrayLength());
        Assert.Equal(wanted.GetProperty("adds").GetInt32(), mend.GetProperty("add").GetArrayLength());
        Assert.Equal(
            wanted.GetProperty("findings").EnumerateArray().Select(pair => $"{pair[0].GetString()} {pair[1].GetString()}").Order(StringComparer.Ordinal),
            verdict.GetProperty("findings").EnumerateArray()
                .Select(finding => $"{finding.GetProperty("kind").GetString()} {finding.GetProperty("rule").GetString()}").Order(StringComparer.Ordinal));
    }
}

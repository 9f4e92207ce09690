using System.Globalization;
using System.Text.Json;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Conformance;

/// <summary>
/// The cases of <c>Data/engine-conformance.jsonl</c>: 60 random procedures with 360 answers, and what a second,
/// independent reading of the contract says of them.
/// </summary>
public sealed class ConformanceTests
{
    public static TheoryData<string> Cases => [.. Lines.Keys];

    private static Dictionary<string, JsonElement> Lines { get; } = File
        .ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "engine-conformance.jsonl"))
        .Select(line => JsonDocument.Parse(line).RootElement)
        .ToDictionary(line => line.GetProperty("procedure").GetProperty("id").GetString()!);

    [Fact]
    public void There_are_sixty_procedures_and_three_hundred_and_sixty_answers()
    {
        Assert.Equal(60, Lines.Count);
        Assert.Equal(360, Lines.Values.Sum(line => line.GetProperty("answers").GetArrayLength()));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_answer_gets_the_verdict_of_the_second_reading(string id)
    {
        var line = Lines[id];
        var variant = line.GetProperty("variant").GetString() is { } name ? new VariantId(name) : (VariantId?)null;
        var grader = Grader.For(ProcedureJson.Read(line.GetProperty("procedure")), variant).Value;
        foreach (var one in line.GetProperty("answers").EnumerateArray())
        {
            var answer = AnswerJson.Parse(one.GetProperty("answer").GetRawText()).Value;
            var verdict = grader.Grade(answer).Value;
            var expected = one.GetProperty("expect");
            Assert.Equal(Expected(expected), Given(verdict));
            Assert.Equal(verdict.Accepted, verdict.Cost == 0);
            Assert.True(grader.Grade(new(verdict.Nearest)).Value.Accepted);
        }
    }

    internal static (Procedure Procedure, VariantId? Variant, string Count) CountOf(string id) => (
        ProcedureJson.Read(Lines[id].GetProperty("procedure")),
        Lines[id].GetProperty("variant").GetString() is { } name ? new VariantId(name) : null,
        Lines[id].GetProperty("acceptedOrders").GetString()!);

    private static string Expected(JsonElement json) => string.Join(' ',
        json.GetProperty("accepted").GetBoolean(),
        json.GetProperty("safe").GetBoolean(),
        json.GetProperty("kept").GetInt32(),
        json.GetProperty("score").GetDecimal().ToString("0.00", CultureInfo.InvariantCulture),
        json.GetProperty("moves").GetInt32(),
        json.GetProperty("drops").GetInt32(),
        json.GetProperty("adds").GetInt32(),
        string.Join(',', json.GetProperty("kinds").EnumerateArray().Select(kind => kind.GetString())),
        string.Join(',', json.GetProperty("findings").EnumerateArray().Select(pair => $"{pair[0]}:{pair[1]}")));

    private static string Given(Verdict verdict) => string.Join(' ',
        verdict.Accepted,
        verdict.Safe,
        verdict.Kept,
        verdict.Score.ToString("0.00", CultureInfo.InvariantCulture),
        verdict.Mend.Moves.Count,
        verdict.Mend.Drop.Count,
        verdict.Mend.Add.Count,
        string.Join(',', verdict.Findings.Select(finding => VerdictJson.CodeOf(finding.Kind)).Distinct().Order(StringComparer.Ordinal)),
        string.Join(',', verdict.Findings.Select(finding => $"{VerdictJson.CodeOf(finding.Kind)}:{finding.Subject}")
            .Order(StringComparer.Ordinal)));
}

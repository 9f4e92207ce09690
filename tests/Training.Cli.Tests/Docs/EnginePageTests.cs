using System.Text.Json;
using System.Text.RegularExpressions;
using Training.Sequencing.Json;
using Training.Sequencing.Verdicts;

namespace Training.Cli.Tests.Docs;

/// <summary>The pages under docs/engine, whose examples are held to what the command line says.</summary>
public sealed partial class EnginePageTests : CommandLine
{
    private static readonly string Pages = Path.Combine(AppContext.BaseDirectory, "Docs", "engine");

    public static TheoryData<string> Names =>
        [.. Directory.EnumerateFiles(Pages, "*.md").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_rule_and_every_kind_of_finding_has_a_page_and_the_first_page_leads_to_all()
    {
        string[] wanted =
        [
            .. Enum.GetValues<FindingKind>().Select(kind => $"finding-{VerdictJson.CodeOf(kind)}"),
            "rule-order", "rule-gap", "rule-state", "analysis",
        ];
        var pages = Names.Select(row => row.Data).Where(name => name != "README");
        Assert.Equal(wanted.Order(StringComparer.Ordinal), pages.Order(StringComparer.Ordinal));
        var first = File.ReadAllText(Path.Combine(Pages, "README.md"));
        Assert.All(wanted, name => Assert.Contains($"({name}.md)", first, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_example_of_a_page_holds(string name)
    {
        var (procedure, answer, examples) = ("", "", 0);
        foreach (Match fence in Fence().Matches(File.ReadAllText(Path.Combine(Pages, name + ".md"))))
        {
            var text = fence.Groups["text"].Value;
            switch (fence.Groups["kind"].Value)
            {
                case "yaml":
                    procedure = Write("procedure.yaml", text);
                    break;
                case "json answer":
                    answer = Write("answer.json", text);
                    break;
                case "json expected":
                    Holds(text, Run("grade", procedure, "--answer", answer));
                    examples++;
                    break;
                case "json analysis":
                    Holds(text, Run("analyse", procedure));
                    examples++;
                    break;
                default:
                    Assert.Fail($"A fence of the kind \"{fence.Groups["kind"].Value}\" is no example.");
                    break;
            }
        }

        Assert.Equal(name != "README", examples > 0);
    }

    [Theory]
    [InlineData("""{"a":[{"b":1}]}""", """{"a":[{"b":1,"c":2}],"d":3}""", true)]
    [InlineData("""{"a":[{"b":2}]}""", """{"a":[{"b":1}]}""", false)]
    [InlineData("""{"a":[]}""", """{"a":[1]}""", false)]
    [InlineData("""{"a":1}""", """{"b":1}""", false)]
    public void A_part_is_known_when_seen(string part, string whole, bool isPart) =>
        Assert.Equal(isPart, IsPart(JsonDocument.Parse(part).RootElement, JsonDocument.Parse(whole).RootElement));

    private static void Holds(string expected, Outcome outcome)
    {
        Assert.Equal("", outcome.Errors);
        Assert.True(
            IsPart(JsonDocument.Parse(expected).RootElement, JsonDocument.Parse(outcome.Output).RootElement),
            $"Expected:\n{expected}\nGiven:\n{outcome.Output}");
    }

    /// <summary>Whether an object has all that is asked for; lists are as long as asked for.</summary>
    private static bool IsPart(JsonElement part, JsonElement whole) => part.ValueKind == whole.ValueKind && part.ValueKind switch
    {
        JsonValueKind.Object => part.EnumerateObject().All(one =>
            whole.TryGetProperty(one.Name, out var other) && IsPart(one.Value, other)),
        JsonValueKind.Array => part.GetArrayLength() == whole.GetArrayLength()
            && part.EnumerateArray().Zip(whole.EnumerateArray()).All(pair => IsPart(pair.First, pair.Second)),
        JsonValueKind.Number => part.GetDecimal() == whole.GetDecimal(),
        _ => JsonElement.DeepEquals(part, whole),
    };

    [GeneratedRegex("""^```(?<kind>[^\n]*)\n(?<text>.*?)^```\s*$""", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}

using System.Text.Json;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Tests.Conformance;

/// <summary>Reads the procedures of the conformance cases; for tests alone, it trusts what it reads.</summary>
internal static class ProcedureJson
{
    public static Procedure Read(JsonElement json) => new(
        new(Text(json, "id")!), Text(json, "title")!, json.GetProperty("revision").GetInt32())
    {
        Variants = [.. List(json, "variants").Select(variant => new VariantId(variant.GetString()!))],
        Facts = [.. Parts(json, "facts").Select(fact => new Fact(
            new(fact.Name), [.. fact.Value.EnumerateArray().Select(value => new FactValue(value.GetString()!))]))],
        Steps = [.. List(json, "steps").Select(Step)],
        Decoys = [.. List(json, "decoys").Select(decoy => new Decoy(new(Text(decoy, "id")!), Text(decoy, "do")!)
        {
            Because = Text(decoy, "because"),
            Otherwise = Text(decoy, "otherwise"),
            Stakes = Stakes(decoy),
        })],
        Rules = [.. List(json, "rules").Select(Rule)],
    };

    private static Step Step(JsonElement json) => new(new(Text(json, "id")!), Text(json, "do")!)
    {
        Takes = Time(json, "takes") ?? Duration.Zero,
        IsWait = Flag(json, "wait"),
        IsOptional = Flag(json, "optional"),
        Choice = Text(json, "one-of") is { } group ? new ChoiceId(group) : null,
        Variants = [.. List(json, "variants").Select(variant => new VariantId(variant.GetString()!))],
        Sets = Settings(json, "sets"),
        Stakes = Stakes(json),
    };

    private static Rule Rule(JsonElement json)
    {
        var id = new RuleId(Text(json, "id")!);
        Rule rule = Text(json, "step") is { } step
            ? new StateRule(id, new(step), Settings(json, "only-while"))
            : new OrderRule(id, Steps(json.GetProperty("first")), Steps(json.GetProperty("then")))
            {
                AtLeast = Time(json, "at-least"),
            };
        return rule with { Because = Text(json, "because"), Otherwise = Text(json, "otherwise"), Stakes = Stakes(json) };
    }

    private static StepId[] Steps(JsonElement json) => json.ValueKind == JsonValueKind.String
        ? [new(json.GetString()!)]
        : [.. json.EnumerateArray().Select(id => new StepId(id.GetString()!))];

    private static FactSetting[] Settings(JsonElement json, string key) =>
        [.. Parts(json, key).Select(part => new FactSetting(new(part.Name), new(part.Value.GetString()!)))];

    private static Stakes Stakes(JsonElement json) => new(
        Text(json, "harm") is { } harm ? Enum.Parse<Harm>(harm, ignoreCase: true) : Harm.Work,
        Text(json, "severity") is { } severity ? Enum.Parse<Severity>(severity, ignoreCase: true) : Severity.Serious);

    private static Duration? Time(JsonElement json, string key)
    {
        if (Text(json, key) is not { } text) return null;
        Assert.True(Duration.TryParse(text, out var duration), text);
        return duration;
    }

    private static string? Text(JsonElement json, string key) =>
        json.TryGetProperty(key, out var part) ? part.GetString() : null;

    private static bool Flag(JsonElement json, string key) => json.TryGetProperty(key, out var part) && part.GetBoolean();

    private static IEnumerable<JsonElement> List(JsonElement json, string key) =>
        json.TryGetProperty(key, out var part) ? part.EnumerateArray() : [];

    private static IEnumerable<JsonProperty> Parts(JsonElement json, string key) =>
        json.TryGetProperty(key, out var part) ? part.EnumerateObject() : [];
}

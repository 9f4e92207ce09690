using System.Globalization;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests;

/// <summary>Small procedures for the examples, and short words to make answers with.</summary>
internal static class Sample
{
    public static Stakes Burn { get; } = new(Harm.People, Severity.Critical);

    /// <summary>The relay tray of the contract, shortened: a key, a wait, a tray, a choice, a tag, a boom and a decoy.</summary>
    public static Procedure RelayTray { get; } = new(new("change-relay-tray"), "Change the relay tray", 1)
    {
        Variants = [new("tipper"), new("crane")],
        Facts = [new(new("key"), [new("on"), new("off")])],
        Steps =
        [
            new(Id("key-off"), "Turn the key off") { Takes = Seconds(5), Sets = [Set("key", "off")], Stakes = Burn },
            new(Id("tag"), "Hang a tag on the key") { IsOptional = true },
            new(Id("rest"), "Wait") { IsWait = true },
            new(Id("lift-tray"), "Lift the tray out"),
            new(Id("hook"), "Hang the tray on the hook") { Choice = new("parking-place") },
            new(Id("bench"), "Lay the tray on the bench") { Choice = new("parking-place") },
            new(Id("stow-boom"), "Stow the boom") { Variants = [new("crane")] },
        ],
        Decoys =
        [
            new(Id("hose"), "Hose the tray down")
            {
                Because = "Water stays in the sockets",
                Otherwise = "The contacts corrode",
                Stakes = new(Harm.Equipment, Severity.Serious),
            },
        ],
        Rules =
        [
            Order("rest-first", ["key-off"], ["lift-tray"]) with
            {
                AtLeast = Seconds(60),
                Because = "The relays are still held for a minute",
                Otherwise = "The contacts arc",
                Stakes = new(Harm.Equipment, Severity.Serious),
            },
            Order("wait-after-key", ["key-off"], ["rest"]),
            Order("wait-before-hand", ["rest"], ["lift-tray"]),
            new StateRule(new("dead-tray"), Id("lift-tray"), [Set("key", "off")])
            {
                Because = "A live tray shorts on the frame",
                Otherwise = "A short and a burn",
                Stakes = Burn,
            },
            Order("park-after", ["lift-tray"], ["hook", "bench"]),
            Order("tag-after", ["key-off"], ["tag"]),
            Order("tag-before", ["tag"], ["lift-tray"]),
        ],
    };

    /// <summary>A procedure of steps <c>a</c>, <c>b</c>, <c>c</c> … without a rule.</summary>
    public static Procedure Plain(string ids) =>
        new(new("plain"), "Plain", 1) { Steps = [.. ids.Select(id => new Step(Id(id.ToString()), $"Do {id}"))] };

    public static Procedure With(this Procedure procedure, params Rule[] rules) =>
        procedure with { Rules = [.. procedure.Rules, .. rules] };

    public static Procedure With(this Procedure procedure, string id, Func<Step, Step> change) => procedure with
    {
        Steps = [.. procedure.Steps.Select(step => step.Id.Value == id ? change(step) : step)],
    };

    public static Procedure With(this Procedure procedure, params Fact[] facts) => procedure with { Facts = facts };

    public static Fact Switch { get; } = new(new("switch"), [new("on"), new("off")]);

    public static OrderRule Order(string id, string[] first, string[] then) =>
        new(new(id), [.. first.Select(Id)], [.. then.Select(Id)]);

    public static OrderRule Order(string id, string first, string then) => Order(id, [first], [then]);

    public static StateRule State(string id, string step, string fact, string value) =>
        new(new(id), Id(step), [Set(fact, value)]);

    public static StepId Id(string id) => new(id);

    public static FactSetting Set(string fact, string value) => new(new(fact), new(value));

    public static Duration Seconds(decimal seconds) => Duration.FromSeconds(seconds);

    public static Grader Grader(this Procedure procedure, string? variant = null) =>
        Sequencing.Grader.For(procedure, variant is null ? null : new VariantId(variant)).Value;

    /// <summary>An answer in short: ids, a wait with its seconds after a colon; what stands before <c>|</c> is the start.</summary>
    public static Answer Answer(string text)
    {
        var halves = text.Split('|');
        return new(Entries(halves[^1])) { Start = halves.Length > 1 ? Entries(halves[0]) : [] };
    }

    /// <summary>An observed run in short: <c>id:begun-done</c>.</summary>
    public static Answer Observed(string text) => new([.. Words(text).Select(word =>
    {
        var parts = word.Split(':', '-');
        var id = string.Join('-', parts[..^2]);
        Assert.True(Times.TryCreate(Seconds(Number(parts[^2])), Seconds(Number(parts[^1])), out var times));
        return new Entry(Id(id)) { Observed = times };
    })]);

    public static Verdict Grade(this Procedure procedure, string answer, string? variant = null) =>
        procedure.Grader(variant).Grade(Answer(answer)).Value;

    public static string Refused(this Procedure procedure, Answer answer) =>
        procedure.Grader().Grade(answer).Fault.Sentence;

    /// <summary>The findings in short: kind, subject and places.</summary>
    public static string[] Short(this Verdict verdict) => [.. verdict.Findings.Select(finding =>
        $"{VerdictJson.CodeOf(finding.Kind)} {finding.Subject} {string.Join(',', finding.Places)}".TrimEnd())];

    public static string Short(this IEnumerable<Entry> entries) => string.Join(' ', entries.Select(entry =>
        entry.Stated is { } stated ? $"{entry.Step}:{stated.Seconds.ToString(CultureInfo.InvariantCulture)}" : entry.Step.Value));

    private static Entry[] Entries(string text) => [.. Words(text).Select(word =>
    {
        var parts = word.Split(':');
        return new Entry(Id(parts[0])) { Stated = parts.Length > 1 ? Seconds(Number(parts[1])) : null };
    })];

    private static string[] Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}

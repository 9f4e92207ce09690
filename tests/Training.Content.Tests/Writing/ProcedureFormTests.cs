using CsCheck;
using Training.Content.Procedures;
using Training.Content.Tests.Shipped;
using Training.Content.Writing;
using Training.Sequencing.Comparing;
using Training.Sequencing.Procedures;

namespace Training.Content.Tests.Writing;

/// <summary>An edit through the form changes what it says, and everything else stays byte for byte.</summary>
public sealed class ProcedureFormTests
{
    private static readonly ContentFile[] Procedures = [.. ShippedContent.Files.Where(file =>
        file.Path.StartsWith("procedures/", StringComparison.Ordinal) && file.Name.Count(letter => letter == '.') == 1)];

    private static readonly string[] SomeWords =
    [
        "Plain words", "with: a colon", "\"quoted\"", "# no comment", "true", "12", "it's", "क्रम से", "a, b", "{ x }", "- dash",
        "ends in a colon:", "back\\slash", "90 s",
    ];

    private static readonly Gen<(ProcedureEdit Edit, ContentFile File)> AnyEdit = Gen.Int[0, int.MaxValue - 1].Select(seed =>
    {
        var lots = new Random(seed);
        var file = OneOf(lots, Procedures);
        return (OneOf(lots, EditsOf(Read(file.Path, file.Text), lots)), file);
    });

    [Fact]
    public void An_edit_of_a_shipped_procedure_leaves_every_other_line_as_it_was() => AnyEdit.Sample(item =>
    {
        var (edit, file) = item;
        var edited = Apply(file.Text, edit);
        var (old, now) = (file.Text.Split('\n'), edited.Split('\n'));
        var before = old.Zip(now).TakeWhile(pair => pair.First == pair.Second).Count();
        var after = old.Skip(before).Reverse().Zip(now.Skip(before).Reverse()).TakeWhile(pair => pair.First == pair.Second).Count();
        // What lies between belongs to the part that was edited; two neighbours where they change places.
        Assert.All(old[before..^after].Where(line => line.TrimStart().StartsWith('#')), line => Assert.Contains(line, now));
        Assert.InRange(old.Length - before - after, 0, 40);
    }, iter: 150);

    [Fact]
    public void An_edit_of_a_shipped_procedure_says_what_it_says_and_nothing_else() => AnyEdit.Sample(item =>
    {
        var (edit, file) = item;
        Assert.Equal(Expected(Read(file.Path, file.Text), edit), Read(file.Path, Apply(file.Text, edit)), Same);
    }, iter: 150);

    [Fact]
    public void A_procedure_is_read_by_the_form_as_it_is_by_the_engine() => Assert.All(Procedures, file =>
    {
        var (procedure, parts) = (Read(file.Path, file.Text), ProcedureForm.Read(file.Text)!);
        Assert.Equal(procedure.Steps.Select(step => (step.Id.Value, step.Do)), parts.Steps.Select(step => (step.Id, step.Text("do"))));
        Assert.Equal(procedure.Rules.Select(rule => rule.Because), parts.Rules.Select(rule => rule.Text("because")));
        Assert.Equal(procedure.Decoys.Select(decoy => decoy.Id.Value), parts.Decoys.Select(decoy => decoy.Id));
        Assert.Equal(procedure.Facts.Select(fact => fact.Id.Value), parts.Facts.Select(fact => fact.Id));
    });

    [Fact]
    public void Keys_that_the_form_does_not_know_and_comments_stay()
    {
        const string text = "id: job\nmood: fine # odd\nsteps:\n  - { id: a, do: A, colour: red } # first\n  # between\n  - { id: b, do: B }\nrules:\n  - id: r\n    first: a\n    # why\n    then:\n      - b\n";
        Assert.Equal(
            text.Replace("do: A", "do: Other", StringComparison.Ordinal),
            Apply(text, new ProcedureEdit.SetText(ProcedurePart.Step, "a", "do", "Other")));
        Assert.Equal(
            text.Replace("      - b", "      [b, a]", StringComparison.Ordinal),
            Apply(text, new ProcedureEdit.SetList(ProcedurePart.Rule, "r", "then", ["b", "a"])));
        Assert.Equal(
            text.Replace("  - { id: a, do: A, colour: red } # first\n  # between\n  - { id: b, do: B }\n", "  - { id: b, do: B }\n  # between\n  - { id: a, do: A, colour: red } # first\n", StringComparison.Ordinal),
            Apply(text, new ProcedureEdit.MoveDown(ProcedurePart.Step, "a")));
        Assert.Equal(
            text[..text.IndexOf("rules:", StringComparison.Ordinal)],
            Apply(text, new ProcedureEdit.Remove(ProcedurePart.Rule, "r")));
    }

    [Theory]
    [InlineData("id: [")]
    [InlineData("")]
    [InlineData("- a list")]
    public void A_text_that_is_no_yaml_is_not_touched(string text) =>
        Assert.False(ProcedureForm.Apply(text, new ProcedureEdit.Remove(ProcedurePart.Step, "a")).IsOk);

    [Fact]
    public void A_part_that_is_gone_is_said_to_be_gone() =>
        Assert.False(ProcedureForm.Apply("steps: [{ id: a, do: A }]", new ProcedureEdit.SetText(ProcedurePart.Step, "b", "do", "B")).IsOk);

    private static string Apply(string text, ProcedureEdit edit) => ProcedureForm.Apply(text, edit).Value;

    private static Procedure Read(string path, string text) => ProcedureFile.Read(new(path, text)) is { Procedure: { } procedure }
        ? procedure
        : throw new InvalidOperationException($"{path} no longer reads:\n{text}");

    private static T OneOf<T>(Random lots, IReadOnlyList<T> all) => all[lots.Next(all.Count)];

    private static ProcedureEdit[] EditsOf(Procedure procedure, Random lots)
    {
        var (step, other) = (OneOf(lots, procedure.Steps), OneOf(lots, procedure.Steps));
        var (rule, order) = (OneOf(lots, procedure.Rules), OneOf(lots, [.. procedure.Rules.OfType<OrderRule>()]));
        var words = OneOf(lots, SomeWords);
        return
        [
            new ProcedureEdit.SetText(ProcedurePart.Step, step.Id.Value, "do", words),
            new ProcedureEdit.SetText(ProcedurePart.Rule, rule.Id.Value, "because", words),
            new ProcedureEdit.SetText(ProcedurePart.Rule, rule.Id.Value, "severity", OneOf(lots, ["minor", "serious", "critical"])),
            new ProcedureEdit.SetText(ProcedurePart.Step, step.Id.Value, "takes", $"{lots.Next(1, 500)} s"),
            new ProcedureEdit.SetFlag(ProcedurePart.Step, step.Id.Value, "optional", lots.Next(2) == 0),
            new ProcedureEdit.SetList(ProcedurePart.Rule, order.Id.Value, "then", [.. new[] { step.Id.Value, other.Id.Value }.Distinct()]),
            new ProcedureEdit.Remove(ProcedurePart.Rule, rule.Id.Value),
            new ProcedureEdit.MoveDown(ProcedurePart.Step, step.Id.Value),
            new ProcedureEdit.Add(ProcedurePart.Step, [("id", "brand-new"), ("do", words)]),
            new ProcedureEdit.Add(ProcedurePart.Decoy, [("id", "brand-new"), ("do", words), ("because", words), ("otherwise", "x")]),
            new ProcedureEdit.Add(ProcedurePart.Rule, [("id", "brand-new"), ("first", new[] { step.Id.Value }), ("then", new[] { other.Id.Value }), ("because", words), ("otherwise", "x")]),
            new ProcedureEdit.AddFact("brand-new", [OneOf(lots, ["off", "open"]), "y"]),
        ];
    }

    private static Procedure Expected(Procedure procedure, ProcedureEdit edit) => edit switch
    {
        ProcedureEdit.SetText { Part: ProcedurePart.Step, Key: "do" } set => procedure with { Steps = [.. procedure.Steps.Select(step => step.Id.Value == set.Id ? step with { Do = set.Value } : step)] },
        ProcedureEdit.SetText { Part: ProcedurePart.Step, Key: "takes" } set => procedure with { Steps = [.. procedure.Steps.Select(step => step.Id.Value == set.Id ? step with { Takes = Seconds(set.Value) } : step)] },
        ProcedureEdit.SetText { Key: "because" } set => procedure with { Rules = [.. procedure.Rules.Select(rule => rule.Id.Value == set.Id ? rule with { Because = set.Value } : rule)] },
        ProcedureEdit.SetText { Key: "severity" } set => procedure with { Rules = [.. procedure.Rules.Select(rule => rule.Id.Value == set.Id ? rule with { Stakes = rule.Stakes with { Severity = Enum.Parse<Severity>(set.Value, ignoreCase: true) } } : rule)] },
        ProcedureEdit.SetFlag set => procedure with { Steps = [.. procedure.Steps.Select(step => step.Id.Value == set.Id ? step with { IsOptional = set.Value } : step)] },
        ProcedureEdit.SetList set => procedure with { Rules = [.. procedure.Rules.Select(rule => rule is OrderRule order && rule.Id.Value == set.Id ? order with { Then = [.. set.Values.Select(id => new StepId(id))] } : rule)] },
        ProcedureEdit.Remove remove => procedure with { Rules = [.. procedure.Rules.Where(rule => rule.Id.Value != remove.Id)] },
        ProcedureEdit.MoveDown move => procedure with { Steps = Moved([.. procedure.Steps], move.Id) },
        ProcedureEdit.Add { Part: ProcedurePart.Step } add => procedure with { Steps = [.. procedure.Steps, new(new("brand-new"), $"{add.Fields[1].Value}")] },
        ProcedureEdit.Add { Part: ProcedurePart.Decoy } add => procedure with { Decoys = [.. procedure.Decoys, new(new("brand-new"), $"{add.Fields[1].Value}") { Because = $"{add.Fields[1].Value}", Otherwise = "x" }] },
        ProcedureEdit.Add add => procedure with { Rules = [.. procedure.Rules, new OrderRule(new("brand-new"), [new(((string[])add.Fields[1].Value)[0])], [new(((string[])add.Fields[2].Value)[0])]) { Because = $"{add.Fields[3].Value}", Otherwise = "x" }] },
        ProcedureEdit.AddFact add => procedure with { Facts = [.. procedure.Facts, new(new("brand-new"), [.. add.Values.Select(value => new FactValue(value))])] },
        _ => throw new InvalidOperationException(),
    };

    private static Duration Seconds(string text) => Duration.TryParse(text, out var duration) ? duration : throw new InvalidOperationException(text);

    private static List<Step> Moved(List<Step> steps, string id)
    {
        var at = steps.FindIndex(step => step.Id.Value == id);
        if (at + 1 < steps.Count) (steps[at], steps[at + 1]) = (steps[at + 1], steps[at]);
        return steps;
    }

    private static bool Same(Procedure one, Procedure other) =>
        ProcedureComparison.Of(one, other, new(1, 2)).IsSame
        && one.Steps.Select(step => step.Id).SequenceEqual(other.Steps.Select(step => step.Id));
}

using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Benchmarks;

/// <summary>Procedures and answers of any size, the same in every run.</summary>
internal static class Jobs
{
    /// <summary>
    /// A job of a trade's kind: every step waits for some two that stand up to twelve places before it; a fact that is set
    /// on and off and is needed between; and a gap with a wait in it.
    /// </summary>
    public static Grader Grader(int size)
    {
        var lots = new SeededDraw(size);
        var rules = new List<Rule>();
        for (var then = 1; then < size; then++)
            for (var r = 0; r < 2; r++)
                rules.Add(Order($"r{then}-{r}", Math.Max(0, then - 1 - lots.Below(12)), then));
        var (on, wait, off) = (size / 5, size / 2, size * 4 / 5);
        rules.Add(Order("on-off", on, off));
        rules.Add(Order("on-wait", on, wait));
        rules.Add(Order("wait-off", wait, off));
        rules.Add(Order("gap", on, off) with { AtLeast = Duration.FromSeconds(90) });
        for (var step = on + 1; step < off; step += 3) rules.Add(new StateRule(new($"s{step}"), Id(step), [Power("on")]));
        var procedure = new Procedure(new("job"), "Job", 1)
        {
            Facts = [new(new("power"), [new("off"), new("on")])],
            Steps = [.. Enumerable.Range(0, size).Select(step => new Step(Id(step), $"Do number {step}")
            {
                IsWait = step == wait,
                Sets = step == on ? [Power("on")] : step == off ? [Power("off")] : [],
                Takes = step % 4 == 1 && step != wait ? Duration.FromSeconds(5) : Duration.Zero,
            })],
            Decoys = [new(new("never"), "Never do this")],
            Rules = [.. rules.Select(rule => rule with { Because = "There is a reason", Otherwise = "Something breaks" })],
        };
        return Sequencing.Grader.For(procedure).Value;
    }

    /// <summary>The listing with a long wait: a right answer.</summary>
    public static Answer Right(Grader grader) => new([.. grader.Procedure.Steps.Select(step => new Entry(step.Id)
    {
        Stated = step.IsWait ? Duration.FromSeconds(90) : null,
    })]);

    /// <summary>The listing with some steps moved at random, a decoy, and a wait that is too short.</summary>
    public static Answer Wrong(Grader grader, int moves, long seed)
    {
        var lots = new SeededDraw(seed);
        var entries = Right(grader).Entries.Select(entry => entry.Stated is null ? entry : entry with { Stated = Duration.FromSeconds(30) }).ToList();
        for (var m = 0; m < moves; m++)
        {
            var from = lots.Below(entries.Count);
            var moved = entries[from];
            entries.RemoveAt(from);
            entries.Insert(lots.Below(entries.Count + 1), moved);
        }

        entries.Insert(entries.Count / 2, new(new("never")));
        return new(entries);
    }

    /// <summary>The steps in any order.</summary>
    public static Answer Shuffled(Grader grader, long seed) => new(new SeededDraw(seed).Shuffle(Right(grader).Entries));

    /// <summary>The procedure of the content by which a truck is isolated.</summary>
    public static Grader Isolating()
    {
        var file = Path.Combine(AppContext.BaseDirectory, "Data", "isolate-chassis.yaml");
        return ProcedureFile.ReadGrader(new("isolate-chassis.yaml", File.ReadAllText(file)), new VariantId("truck-k26")).Grader!;
    }

    /// <summary>The truck isolated as listed; or with the isolator opened before the wait and without the last proof.</summary>
    public static Answer Isolated(Grader grader, bool isWrong)
    {
        var entries = grader.Procedure.Steps
            .Where(step => step.Id.Value is not ("open-isolator-bus" or "prove-on-unit"))
            .Select(step => new Entry(step.Id) { Stated = step.IsWait ? Duration.FromSeconds(90) : null }).ToList();
        if (!isWrong) return new(entries);
        var (wait, open) = (entries.FindIndex(entry => entry.Stated is not null), entries.FindIndex(entry => entry.Step.Value == "open-isolator-truck"));
        (entries[wait], entries[open]) = (entries[open], entries[wait]);
        entries.RemoveAt(entries.Count - 1);
        return new(entries);
    }

    private static OrderRule Order(string id, int first, int then) => new(new(id), [Id(first)], [Id(then)]);

    private static StepId Id(int step) => new($"step-{step}");

    private static FactSetting Power(string value) => new(new("power"), new(value));
}

using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Tests.Results;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Practising;

/// <summary>A scenario in which a step of its procedure cannot be done, from the question to the results.</summary>
public sealed class AbsentStepPracticeTests
{
    private static readonly ScenarioId NoHook = new("no-hook");
    private static readonly StepId Hook = new("hook");
    private static readonly Chance HookUsed = new(ChanceKind.Decoy, "hook");

    [Fact]
    public async Task It_is_offered_like_a_step_and_told_as_what_cannot_be_done()
    {
        await using var world = await World();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, NoHook, QuestionKind.Order, seed: 7)));
        Assert.Contains(asked.Question.Offered, offered => offered is { Id.Value: "hook", Do: "Hang the tray on the hook", IsWait: false });
        Assert.Empty(asked.Question.Situation.Absent);
        var judged = await HandIn(world, asked, Ways.RightOrder);
        Assert.False(judged.Accepted);
        var finding = judged.Order.Verdict.Findings.Single(found => found.Kind == FindingKind.Decoy);
        Assert.Equal("hook", finding.Subject);
        Assert.Contains("It is bent", finding.Message, StringComparison.Ordinal);
        Assert.Equal([new StepId("bench")], judged.Order.Verdict.Mend.Add);
        Assert.Equal("It is bent", judged.Order.Procedure.Decoys.Single(decoy => decoy.Id == Hook).Because);
    }

    [Fact]
    public async Task The_other_way_is_right_and_both_are_where_nothing_is_absent()
    {
        await using var world = await World();
        foreach (var (scenario, answer, isRight) in new[]
        {
            (NoHook, TallyHouse.RightBench, true), (NoHook, Ways.RightOrder, false), (TallyHouse.Plain, TallyHouse.RightBench, true), (TallyHouse.Plain, Ways.RightOrder, true),
        })
        {
            var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, scenario, QuestionKind.Order, seed: 7)));
            Assert.Equal(isRight, (await HandIn(world, asked, answer)).Accepted);
        }
    }

    [Fact]
    public async Task Two_scenarios_with_the_same_absent_step_each_tell_their_own_reason()
    {
        await using var world = await World();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, NoHook, QuestionKind.Order, seed: 7)));
        Assert.Contains("It is bent", (await HandIn(world, asked, Ways.RightOrder)).Order.Verdict.Findings[^1].Message, StringComparison.Ordinal);
        var other = Ok(await world.Practice(practice => practice.Draw(world.Technician, new("no-hook-either"), QuestionKind.Order, seed: 7)));
        Assert.Contains("Somebody took it", (await HandIn(world, other, Ways.RightOrder)).Order.Verdict.Findings[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_counted_of_it_is_what_counting_again_gives()
    {
        await using var world = await World();
        var people = await world.Technicians(6, world.Quillmoor, "Hook");
        foreach (var person in people) await world.Practise(person, Ways.RightOrder, NoHook);
        await world.Practise(world.Technician, TallyHouse.RightBench, NoHook);
        await world.Practise(world.Colleague, Ways.RightOrder);
        var kept = await world.Counted();
        Assert.Equal(8, await world.CountAgain());
        Assert.Equal(kept, await world.Counted());
        // The colleague was not asked where the hook is bent, so there was no chance to get that wrong.
        var subject = Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, HookUsed, WorkSource.Practice)));
        Assert.Equal(new Share(6, 7), subject.Sources.Single(source => source.Source == WorkSource.Practice).Share);
    }

    [Fact]
    public async Task The_example_of_a_wrong_order_is_shown_by_what_it_was_judged_by()
    {
        await using var world = await World();
        foreach (var person in await world.Technicians(6, world.Quillmoor, "Hook")) await world.Practise(person, Ways.RightOrder, NoHook);
        var line = Assert.Single(Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, WorkSource.Practice))).Orders);
        Assert.Contains(HookUsed, line.Broken);
        var view = Ok(await world.Results(results => results.Look(world.Trainer, ChangeTray, WorkSource.Practice, line.Code, "en")));
        Assert.False(view.Example.Verdict.Accepted);
        Assert.Equal("It is bent", view.Example.Procedure.Decoys.Single(decoy => decoy.Id == Hook).Because);
    }

    private static async Task<TestWorld> World()
    {
        var world = await Create();
        var state = await world.One<Publisher>().Publish(
            [.. Files, Scenario("no-hook", "It is bent", "The tray falls"), Scenario("no-hook-either", "Somebody took it", "You look for it all day")]);
        Assert.False(state.IsHeldBack, string.Join('\n', state.Problems));
        return world;
    }

    private static ContentFile Scenario(string id, string because, string otherwise) => new($"scenarios/{id}.md", $$"""
        ---
        title: No hook
        procedure: change-tray
        variant: crane
        kinds: [order]
        absent:
          - { id: hook, because: {{because}}, otherwise: {{otherwise}} }
        ---
        The hook cannot be used today. The bench is free.
        """);

    private static async Task<JudgedOrderView> HandIn(TestWorld world, PracticeQuestion asked, string answer) => (JudgedOrderView)Ok(
        await world.Practice(practice => practice.HandIn(world.Technician, new(Guid.NewGuid(), asked.Ticket, answer)))).Judged;
}

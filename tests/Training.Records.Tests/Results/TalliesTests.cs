using Microsoft.EntityFrameworkCore;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Results;
using Training.Records.Tests.Observing;
using Training.Sequencing.Verdicts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Results;

/// <summary>What is counted with every graded order.</summary>
public sealed class TalliesTests
{
    private static readonly Chance HandAfter = new(ChanceKind.Rule, "hand-after");

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task What_is_kept_is_what_counting_again_gives(int seed)
    {
        await using var world = await Create();
        var random = new Random(seed);
        Actor[] people = [world.Technician, world.Colleague, world.ForeignTechnician];
        for (var round = 0; round < 60; round++)
        {
            world.Clock.Advance(TimeSpan.FromHours(random.Next(60)));
            if (round == 30) await world.Republish("procedures/change-tray.yaml", "at-least: 60 s", "at-least: 30 s");
            await world.PractiseAnything(people[random.Next(people.Length)], random, random.Next(2) == 0 ? "en" : "es");
            // The same orders again and again, by other people, after other lots, on the other job and of another revision.
            var (job, order) = random.Next(4) switch
            {
                0 => ("tray-plain", Ways.UnsafeOrder),
                1 => ("tray-plain", Ways.RightOrder),
                2 => ("tray-hurry", """[{"step":"lift-tray"},{"step":"key-off"}]"""),
                _ => ("tray-plain", """[{"step":"lift-tray"},{"step":"key-off"}]"""),
            };
            await world.Practise(people[random.Next(people.Length)], order, scenario: new(job), seed: random.NextInt64());
        }

        await world.FailedPaper(world.ForeignTechnician);
        await world.EarnedRecord(world.Technician);
        await world.PassedPaper(world.Colleague);
        var run = await world.EndedRun(world.Colleague, ChangeTray, null, ("lift-tray", 10), ("hose", 20), ("key-off", 30));
        Ok(await world.Runs(runs => runs.Sign(world.Examiner, run, "Stopped.")));
        await world.SeenByTwo(world.Colleague, endsFirst: true);
        await world.PassedPaper(world.ShopExaminer);
        await world.SeenByTwo(world.ShopExaminer, endsFirst: false);
        var kept = await world.Counted();
        Assert.Contains(kept, line => line.Contains("Right NotThere", StringComparison.Ordinal));
        Assert.Contains(kept, line => line.Contains("Vehicle", StringComparison.Ordinal));
        Assert.Contains(kept, line => line.Contains("Paper", StringComparison.Ordinal));
        Assert.True(await world.CountAgain() > 50);
        Assert.Equal(kept, await world.Counted());
    }

    [Fact]
    public async Task A_person_counts_once_for_a_rule_at_the_first_chance()
    {
        await using var world = await Create();
        await world.Practise(world.Technician, Ways.UnsafeOrder);
        await world.Practise(world.Technician, Ways.RightOrder);
        await world.Practise(world.Colleague, Ways.RightOrder);
        await world.Practise(world.Colleague, Ways.UnsafeOrder);
        Assert.Equal(new Share(1, 2), await Everybody(world, HandAfter));
    }

    [Fact]
    public async Task The_first_chance_is_that_of_the_rule_and_not_of_the_job()
    {
        await using var world = await Create();
        await world.Practise(world.Technician, """[{"step":"key-off"}]""");
        Assert.Equal(new Share(0, 0), await Everybody(world, HandAfter));
        await world.Practise(world.Technician, Ways.UnsafeOrder);
        Assert.Equal(new Share(1, 1), await Everybody(world, HandAfter));
        Assert.Equal(new Share(1, 1), await Everybody(world, new(ChanceKind.LeftOut, "lift-tray")));
    }

    [Fact]
    public async Task The_groups_of_each_cut_add_up_to_everybody()
    {
        await using var world = await Create();
        await world.Practise(world.Technician, Ways.UnsafeOrder, language: "es");
        await world.Practise(world.Colleague, Ways.RightOrder);
        world.Clock.Advance(TimeSpan.FromDays(40));
        await world.Republish("procedures/change-tray.yaml", "at-least: 60 s", "at-least: 50 s");
        await world.Practise(world.Technician, Ways.UnsafeOrder);
        await world.Practise(world.ForeignTechnician, Ways.UnsafeOrder);
        var tallies = await world.Db(db => db.Tallies.AsNoTracking().ToListAsync());
        var number = await NumberOf(world, HandAfter);
        foreach (var cut in Enum.GetValues<Cut>())
        {
            var groups = tallies.Where(tally => tally.Cut == cut).Select(tally => tally.Of(number)).ToList();
            Assert.Equal((2, 3), (groups.Sum(share => share.Part), groups.Sum(share => share.Whole)));
            if (cut != Cut.Everybody) Assert.Equal(2, groups.Count);
        }
    }

    [Fact]
    public async Task An_order_without_an_entry_and_a_question_with_options_are_not_counted()
    {
        await using var world = await Create();
        await world.Practise(world.Technician, "[]");
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, TallyHouse.Plain, QuestionKind.FirstFault)));
        Ok(await world.Practice(practice => practice.HandIn(world.Technician, new(Guid.NewGuid(), asked.Ticket, """{"chosen":["1"]}"""))));
        Assert.Empty(await world.Counted());
    }

    [Fact]
    public async Task Wrong_orders_are_told_apart_by_what_they_break_and_the_example_is_the_one_that_is_mended_soonest()
    {
        await using var world = await Create();
        // Both break the same and nothing else; the first one leaves more to move.
        var longer = await world.Practise(world.Technician, Ways.UnsafeOrder);
        await world.Practise(world.Technician, Ways.UnsafeOrder);
        await world.Practise(world.Colleague, Ways.UnsafeOrder);
        var order = Assert.Single(await world.Db(db => db.WrongOrders.AsNoTracking().ToListAsync()));
        Assert.Equal((2, longer.Value), (order.People, order.ExampleId));
        await world.Practise(world.Colleague, "[" + """{"step":"key-off"}""" + "]");
        Assert.Equal(2, await world.Db(db => db.WrongOrders.CountAsync()));
    }

    [Fact]
    public async Task A_database_from_before_is_counted_when_it_is_opened()
    {
        await using var world = await Create();
        await world.Practise(world.Technician, Ways.UnsafeOrder);
        await world.PassedPaper(world.Technician);
        await world.SeenByTwo(world.Technician, endsFirst: false);
        var kept = await world.Counted();
        await world.Db(async db =>
        {
            await db.Tallies.ExecuteDeleteAsync();
            await db.FirstChances.ExecuteDeleteAsync();
            await db.WrongOrders.ExecuteDeleteAsync();
            await db.JudgedPairs.ExecuteDeleteAsync();
            return await db.TallySubjects.ExecuteDeleteAsync();
        });
        await world.Restart();
        Assert.Equal(kept, await world.Counted());
    }

    [Fact]
    public async Task What_two_examiners_saw_in_a_database_from_before_is_counted_when_it_is_opened()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        await world.SeenByTwo(world.Technician, endsFirst: true);
        var kept = await world.Counted();
        Assert.NotEqual(0, await world.Db(db => db.JudgedPairs.ExecuteDeleteAsync()));
        await world.Restart();
        Assert.Equal(kept, await world.Counted());
    }

    private static async Task<int> NumberOf(TestWorld world, Chance chance) => await world.Db(db => db.TallySubjects.AsNoTracking()
        .Where(subject => subject.Kind == chance.Kind && subject.Subject == chance.Subject).Select(subject => (int?)subject.Number).SingleOrDefaultAsync()) ?? int.MaxValue;

    private static async Task<Share> Everybody(TestWorld world, Chance chance)
    {
        var number = await NumberOf(world, chance);
        return (await world.Db(db => db.Tallies.AsNoTracking().SingleAsync(tally => tally.Cut == Cut.Everybody))).Of(number);
    }
}

using Training.Records.Accounts;
using Training.Records.Results;
using Training.Sequencing.Verdicts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Results;

/// <summary>What trainers, examiners and owners are shown of the tallies.</summary>
public sealed class RuleResultsTests
{
    private static readonly Chance HandAfter = new(ChanceKind.Rule, "hand-after");

    [Fact]
    public async Task The_rule_that_most_surely_is_broken_comes_first()
    {
        await using var world = await Create();
        await Six(world);
        var worst = Ok(await world.Results(results => results.Worst(world.Trainer, WorkSource.Practice, 5)));
        Assert.Equal(HandAfter, worst[0].Line.What);
        Assert.Equal(new Share(6, 6), worst[0].Line.Share);
        // Everybody broke the other one with it; what nobody broke is not there.
        Assert.All(worst, line => Assert.True(line.Line.Share!.Value.Part > 0));
    }

    [Fact]
    public async Task Four_people_are_not_shown()
    {
        await using var world = await Create();
        foreach (var person in await world.Technicians(4, world.Quillmoor, "Few")) await world.Practise(person, Ways.UnsafeOrder);
        Assert.Empty(Ok(await world.Results(results => results.Worst(world.Trainer, WorkSource.Practice, 5))));
        var lines = Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, WorkSource.Practice))).Lines;
        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.Null(line.Share));
        Assert.Null(Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, HandAfter, WorkSource.Practice))).Sources[0].Share);
    }

    [Fact]
    public async Task A_small_shop_is_not_found_by_taking_the_other_one_from_everybody()
    {
        await using var world = await Create();
        await Six(world);
        await world.Practise(world.ForeignTechnician, Ways.RightOrder);
        var everybody = Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, WorkSource.Practice)));
        Assert.Equal(new Share(6, 7), everybody.Lines.Single(line => line.What == HandAfter).Share);
        foreach (var shop in new[] { world.Quillmoor, world.Brackenhill })
        {
            var own = Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, WorkSource.Practice, new(Cut.Shop, shop.ToString()))));
            Assert.Null(own.Lines.Single(line => line.What == HandAfter).Share);
        }

        var subject = Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, HandAfter, WorkSource.Practice)));
        Assert.Equal(2, Assert.Single(subject.Shops).Keys.Count);
    }

    [Fact]
    public async Task An_owner_sees_the_own_shop_alone_and_nothing_that_tells_its_people_apart()
    {
        await using var world = await Create();
        await Six(world);
        foreach (var person in await world.Technicians(5, world.Brackenhill, "Other")) await world.Practise(person, Ways.RightOrder);
        Assert.Equal(new Share(6, 6), await Shown(world.Owner));
        Assert.Equal(new Share(0, 5), await Shown(world.ForeignOwner));
        Assert.Equal(new Share(6, 11), await Shown(world.Trainer));
        Assert.Equal(new Share(6, 11), await Shown(world.Examiner));
        var results = Ok(await world.Results(results => results.Of(world.Owner, ChangeTray, WorkSource.Practice)));
        Assert.Empty(results.Groups);
        Assert.Empty(results.Orders);
        NotFound(await world.Results(results => results.Of(world.Owner, ChangeTray, WorkSource.Practice, new(Cut.Shop, world.Brackenhill.ToString()))));
        Assert.Empty(Ok(await world.Results(results => results.Of(world.Owner, ChangeTray, HandAfter, WorkSource.Practice))).Shops);

        async Task<Share?> Shown(Actor actor) => Ok(await world.Results(results => results.Of(actor, ChangeTray, WorkSource.Practice)))
            .Lines.Single(line => line.What == HandAfter).Share;
    }

    [Fact]
    public async Task A_technician_sees_no_results()
    {
        await using var world = await Create();
        NotAllowed(await world.Results(results => results.Overview(world.Technician, WorkSource.Practice)));
        NotAllowed(await world.Results(results => results.Worst(world.Technician, WorkSource.Practice, 5)));
        NotAllowed(await world.Results(results => results.Of(world.Technician, ChangeTray, WorkSource.Practice)));
        NotAllowed(await world.Results(results => results.Of(world.Technician, ChangeTray, HandAfter, WorkSource.Practice)));
        NotAllowed(await world.Results(results => results.Look(world.Technician, ChangeTray, WorkSource.Practice, "x", "en")));
    }

    [Fact]
    public async Task A_revision_is_compared_with_the_one_before_by_other_people()
    {
        await using var world = await Create();
        await Six(world);
        world.Clock.Advance(TimeSpan.FromDays(3));
        await world.Republish("procedures/change-tray.yaml", "revision: 1", "revision: 2");
        foreach (var person in await world.Technicians(5, world.Brackenhill, "Later")) await world.Practise(person, Ways.RightOrder);
        var subject = Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, HandAfter, WorkSource.Practice)));
        Assert.Equal(["1", "2"], subject.Revisions.Select(part => part.Keys.Single().Name));
        var change = Assert.Single(subject.Changes);
        Assert.Equal(-1, change.Difference, 6);
        Assert.Equal(new Share(0, 5).Less(new(6, 6)), change.Interval);
        Assert.True(change.Interval.High < 0);
    }

    [Fact]
    public async Task The_commonest_wrong_order_is_shown_with_its_replay_once_five_people_gave_it()
    {
        await using var world = await Create();
        var people = await Six(world);
        await world.Practise(people[0], """[{"step":"key-off"}]""");
        var line = Assert.Single(Ok(await world.Results(results => results.Of(world.Trainer, ChangeTray, WorkSource.Practice))).Orders);
        Assert.Equal(6, line.People);
        Assert.Contains(HandAfter, line.Broken);
        var view = Ok(await world.Results(results => results.Look(world.Trainer, ChangeTray, WorkSource.Practice, line.Code, "en")));
        Assert.Equal(line.Cost, view.Example.Verdict.Cost);
        Assert.Equal(line.Broken.ToHashSet(), view.Example.Verdict.Findings.Select(Chance.Of).ToHashSet());
        NotFound(await world.Results(results => results.Look(world.Owner, ChangeTray, WorkSource.Practice, line.Code, "en")));
        var rare = (await world.Counted()).Single(told => told.Contains(": 1 ", StringComparison.Ordinal)).Split(' ')[2].TrimEnd(':');
        NotFound(await world.Results(results => results.Look(world.Trainer, ChangeTray, WorkSource.Practice, rare, "en")));
    }

    private static async Task<List<Actor>> Six(TestWorld world)
    {
        var people = await world.Technicians(6, world.Quillmoor, "Hand");
        foreach (var person in people) await world.Practise(person, Ways.UnsafeOrder);
        return people;
    }
}

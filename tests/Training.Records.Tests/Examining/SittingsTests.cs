using Training.Records.Examining;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Examining;

public sealed class SittingsTests
{
    [Fact]
    public async Task Only_an_examiner_opens_a_sitting_for_a_competency_that_is_served()
    {
        await using var world = await Create();
        foreach (var actor in new[] { world.Technician, world.Owner, world.Trainer, world.Administrator })
            NotAllowed(await world.Sittings(sittings => sittings.Open(actor, RelayTrays, "Hall 2")));
        NotFound(await world.Sittings(sittings => sittings.Open(world.Examiner, new("no-such-competency"), "Hall 2")));
        Refused(
            await world.Sittings(sittings => sittings.Open(world.Examiner, RelayTrays, "  ")),
            "Say in up to 200 characters where the sitting is.");
    }

    [Fact]
    public async Task A_technician_who_is_admitted_twice_has_one_paper()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var both = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => world.Admit(sitting, world.Technician))));
        Assert.Single(both.Distinct());
        Assert.Equal(PaperState.Admitted, Assert.Single(Ok(await world.Sittings(sittings => sittings.Look(world.Examiner, sitting))).Papers).State);
    }

    [Fact]
    public async Task Two_sittings_that_admit_somebody_at_once_give_one_paper()
    {
        await using var world = await Create();
        var first = await world.OpenSitting();
        var second = await world.OpenSitting(examiner: world.OtherExaminer);
        var both = await Task.WhenAll(
            Task.Run(() => world.Sittings(sittings => sittings.Admit(world.Examiner, first, world.Technician.Person))),
            Task.Run(() => world.Sittings(sittings => sittings.Admit(world.OtherExaminer, second, world.Technician.Person))));
        Refused(
            Assert.Single(both, outcome => !outcome.IsOk), "Amara Okafor has an open paper in another sitting; close that one first.");
    }

    [Fact]
    public async Task Nobody_examines_themself()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting(examiner: world.ShopExaminer);
        Refused(
            await world.Sittings(sittings => sittings.Admit(world.ShopExaminer, sitting, world.ShopExaminer.Person)),
            "Nobody examines themself.");
        var candidates = Ok(await world.Sittings(sittings => sittings.Candidates(world.ShopExaminer, sitting)));
        Assert.Equal("Nobody examines themself.", candidates.Single(of => of.Person == world.ShopExaminer.Person).Refusal!.Sentence);
        Assert.Null(candidates.Single(of => of.Person == world.Technician.Person).Refusal);
    }

    [Fact]
    public async Task Only_technicians_are_admitted_and_only_by_the_sittings_examiner()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        Refused(
            await world.Sittings(sittings => sittings.Admit(world.Examiner, sitting, world.Owner.Person)),
            "Only technicians of a shop sit papers.");
        Refused(
            await world.Sittings(sittings => sittings.Admit(world.OtherExaminer, sitting, world.Technician.Person)),
            "Only the examiner who opened the sitting admits to it.");
        NotFound(await world.Sittings(sittings => sittings.Admit(world.Examiner, sitting, new(Guid.NewGuid()))));
        NotAllowed(await world.Sittings(sittings => sittings.Admit(world.Owner, sitting, world.Technician.Person)));
    }

    [Fact]
    public async Task An_examiner_of_a_shop_admits_nobody_of_another()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting(examiner: world.ShopExaminer);
        NotFound(await world.Sittings(sittings => sittings.Admit(world.ShopExaminer, sitting, world.ForeignTechnician.Person)));
    }

    [Fact]
    public async Task Somebody_who_failed_waits_as_long_as_the_competency_says()
    {
        await using var world = await Create();
        await world.FailedPaper(world.Technician);
        var sitting = await world.OpenSitting();
        world.Clock.Advance(TimeSpan.FromHours(24) - TimeSpan.FromSeconds(1));
        Refused(
            await world.Sittings(sittings => sittings.Admit(world.Examiner, sitting, world.Technician.Person)),
            "Amara Okafor failed this paper and may sit it again from 2026-03-03 09:00.");
        world.Clock.Advance(TimeSpan.FromSeconds(1));
        Ok(await world.Sittings(sittings => sittings.Admit(world.Examiner, sitting, world.Technician.Person)));
    }

    [Fact]
    public async Task A_closed_sitting_admits_nobody_and_lapses_what_was_not_begun()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var paper = await world.Admit(sitting, world.Technician);
        Refused(
            await world.Sittings(sittings => sittings.Close(world.OtherExaminer, sitting)),
            "Only the examiner who opened the sitting, or an administrator, closes it.");
        var closed = Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, sitting)));
        Assert.Equal(PaperState.Lapsed, Assert.Single(closed.Papers).State);
        Refused(
            await world.Sittings(sittings => sittings.Admit(world.Examiner, sitting, world.Colleague.Person)),
            "The sitting is closed; open a new one.");
        Refused(
            await world.Papers(papers => papers.Begin(world.Technician, paper)), "The sitting was closed before the paper was begun.");
        world.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Equal(closed.Sitting, Ok(await world.Sittings(sittings => sittings.Close(world.Administrator, sitting))).Sitting);
        await world.Admit(await world.OpenSitting(), world.Technician);
    }

    [Fact]
    public async Task Whoever_was_admitted_by_mistake_is_taken_off_again_and_can_be_admitted_elsewhere()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var paper = await world.Admit(sitting, world.Technician);
        Assert.Empty(Ok(await world.Sittings(sittings => sittings.TakeOff(world.Examiner, sitting, world.Technician.Person))).Papers);
        NotFound(await world.Papers(papers => papers.Begin(world.Technician, paper)));
        await world.Admit(await world.OpenSitting(), world.Technician);
        Assert.Empty(Ok(await world.Sittings(sittings => sittings.TakeOff(world.Examiner, sitting, world.Technician.Person))).Papers);
    }

    [Fact]
    public async Task Whoever_has_begun_is_not_taken_off_nor_who_has_handed_in()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var paper = await world.Begin(world.Technician, await world.Admit(sitting, world.Technician));
        const string Begun = "Amara Okafor has begun the paper and cannot be taken off the sitting any more.";
        Refused(await world.Sittings(sittings => sittings.TakeOff(world.Examiner, sitting, world.Technician.Person)), Begun);
        Ok(await world.Papers(papers => papers.HandIn(world.Technician, paper.Id)));
        Refused(await world.Sittings(sittings => sittings.TakeOff(world.Examiner, sitting, world.Technician.Person)), Begun);
    }

    [Fact]
    public async Task Nobody_is_taken_off_a_closed_sitting()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        await world.Admit(sitting, world.Technician);
        Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, sitting)));
        Refused(
            await world.Sittings(sittings => sittings.TakeOff(world.Examiner, sitting, world.Technician.Person)),
            "The sitting is closed; who was admitted to it stays on its list.");
    }

    [Fact]
    public async Task Only_the_sittings_examiner_takes_somebody_off()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        await world.Admit(sitting, world.Technician);
        Refused(
            await world.Sittings(sittings => sittings.TakeOff(world.OtherExaminer, sitting, world.Technician.Person)),
            "Only the examiner who opened the sitting takes somebody off it.");
        foreach (var actor in new[] { world.Owner, world.Technician, world.Administrator })
            NotAllowed(await world.Sittings(sittings => sittings.TakeOff(actor, sitting, world.Technician.Person)));
        Assert.Single(Ok(await world.Sittings(sittings => sittings.Look(world.Examiner, sitting))).Papers);
    }

    [Fact]
    public async Task Everybody_in_a_sitting_is_asked_from_the_publication_that_it_was_opened_on()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var paper = await world.Admit(sitting, world.Technician);
        await world.Republish("competencies/relay-trays.yaml", "time: 30 min", "time: 5 min");
        var open = await world.Begin(world.Technician, paper);
        Assert.Equal(30, open.Left.TotalMinutes);
        Assert.NotEqual(1, world.One<Library>().Current.Number);
    }

    [Fact]
    public async Task The_list_has_open_sittings_first()
    {
        await using var world = await Create();
        var first = await world.OpenSitting();
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        var second = await world.OpenSitting();
        Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, second)));
        Assert.Equal([first, second], Ok(await world.Sittings(sittings => sittings.List(world.OtherExaminer))).Select(line => line.Id));
        NotAllowed(await world.Sittings(sittings => sittings.List(world.Owner)));
    }
}

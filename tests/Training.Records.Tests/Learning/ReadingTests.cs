using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Learning;

public sealed class ReadingTests
{
    [Fact]
    public async Task A_lesson_that_is_finished_twice_is_read_once_at_the_first_time()
    {
        await using var world = await Create();
        var first = Ok(await world.Reading(reading => reading.Finish(world.Technician, new("01-trays"))));
        world.Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(first, Ok(await world.Reading(reading => reading.Finish(world.Technician, new("01-trays")))));
        Assert.Equal(first, Assert.Single(Ok(await world.Reading(reading => reading.Of(world.Owner, world.Technician.Person)))));
    }

    [Fact]
    public async Task A_lesson_that_was_changed_is_no_longer_read_as_it_is_served()
    {
        await using var world = await Create();
        Ok(await world.Reading(reading => reading.Finish(world.Technician, new("01-trays"))));
        await world.Republish("modules/01-trays/lesson.md", "A tray holds relays.", "A tray holds many relays.");
        Assert.False(Assert.Single(Ok(await world.Reading(reading => reading.Of(world.Technician, world.Technician.Person)))).IsAsServedNow);
        Ok(await world.Reading(reading => reading.Finish(world.Technician, new("01-trays"))));
        Assert.True(Assert.Single(Ok(await world.Reading(reading => reading.Of(world.Technician, world.Technician.Person)))).IsAsServedNow);
    }

    [Fact]
    public async Task A_module_that_does_not_exist_is_not_found()
    {
        await using var world = await Create();
        NotFound(await world.Reading(reading => reading.Finish(world.Technician, new("99-nothing"))));
        NotFound(await world.Reading(reading => reading.Of(world.Technician, world.Colleague.Person)));
    }
}

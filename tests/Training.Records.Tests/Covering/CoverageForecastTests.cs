using CsCheck;
using NodaTime;
using Training.Records.Covering;

namespace Training.Records.Tests.Covering;

public sealed class CoverageForecastTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);

    [Fact]
    public void The_steps_say_of_every_day_how_many_hold() =>
        Gen.Select(Gen.Int[-5, 40].Array[0, 12], Gen.Int[0, 30]).Sample((ends, days) =>
        {
            var lastDay = Today.PlusDays(days);
            var steps = CoverageForecast.Steps(ends.Select(end => Today.PlusDays(end)), Today, lastDay);
            Assert.Equal(steps.Select(step => step.From).Distinct().Order(), steps.Select(step => step.From));
            for (var day = 0; day <= days; day++)
                Assert.Equal(ends.Count(end => end >= day), steps.Last(step => step.From <= Today.PlusDays(day)).People);
        }, iter: 1_000);

    [Fact]
    public void The_day_after_the_last_day_of_a_record_is_the_first_without_it()
    {
        var steps = CoverageForecast.Steps([Today.PlusDays(3), Today.PlusDays(10)], Today, Today.PlusDays(30));
        Assert.Equal([new(Today, 2), new(Today.PlusDays(4), 1), new(Today.PlusDays(11), 0)], steps);
        Assert.Equal(Today.PlusDays(4), CoverageForecast.FirstBelow(steps, 2));
        Assert.Equal(Today, CoverageForecast.FirstBelow(steps, 3));
        Assert.Null(CoverageForecast.FirstBelow(steps, 0));
    }
}

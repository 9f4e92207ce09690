using Training.Records.Observing;
using Training.Sequencing.Procedures;

namespace Training.Records.Tests.Observing;

public sealed class RunAnswerTests
{
    private static readonly Procedure Job = new(new("job"), "Job", 1)
    {
        Steps =
        [
            new(new("turn"), "Turn") { Takes = Duration.FromSeconds(10) },
            new(new("rest"), "Rest") { IsWait = true },
            new(new("look"), "Look"),
        ],
        Decoys = [new(new("hit"), "Hit")],
    };

    [Fact]
    public void A_step_began_as_long_before_its_tap_as_it_takes() => Assert.Equal([(15m, 25m)], TimesOf(("turn", 25)));

    [Fact]
    public void A_step_never_began_before_the_tap_before_it() =>
        Assert.Equal([(20m, 20m), (20m, 25m)], TimesOf(("look", 20), ("turn", 25)));

    [Fact]
    public void The_first_step_never_began_before_the_run() => Assert.Equal([(0m, 4m)], TimesOf(("turn", 4)));

    [Fact]
    public void A_wait_began_at_the_tap_before_it() => Assert.Equal([(10m, 20m), (20m, 95m)], TimesOf(("turn", 20), ("rest", 95)));

    [Fact]
    public void A_decoy_takes_no_time() => Assert.Equal([(7m, 7m)], TimesOf(("hit", 7)));

    private static (decimal, decimal)[] TimesOf(params (string Step, decimal At)[] taps) =>
        [.. RunAnswer.Of(Job, taps.Select((tap, index) => new Tap
        {
            Number = index + 1,
            Id = Guid.NewGuid(),
            Step = new(tap.Step),
            Seconds = tap.At,
            ReceivedAt = default,
        })).Entries.Select(entry => (entry.Observed!.Value.StartedAt.Seconds, entry.Observed.Value.FinishedAt.Seconds))];
}

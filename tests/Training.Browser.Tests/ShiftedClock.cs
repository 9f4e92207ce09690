namespace Training.Browser.Tests;

/// <summary>The real time, moved on by a test so that nobody waits 90 s for the after-treatment of a chassis that is not there.</summary>
public sealed class ShiftedClock : TimeProvider
{
    private TimeSpan shift;

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + shift;

    public void MoveOn(TimeSpan by) => shift += by;
}

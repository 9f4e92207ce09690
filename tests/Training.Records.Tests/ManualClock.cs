namespace Training.Records.Tests;

/// <summary>A clock that stands until a test moves it.</summary>
public sealed class ManualClock(DateTimeOffset start) : TimeProvider
{
    private long ticks = start.UtcTicks;

    public override DateTimeOffset GetUtcNow() => new(Interlocked.Read(ref ticks), TimeSpan.Zero);

    public void Advance(TimeSpan length) => Interlocked.Add(ref ticks, length.Ticks);

    public void Set(DateTimeOffset at) => Interlocked.Exchange(ref ticks, at.UtcTicks);
}

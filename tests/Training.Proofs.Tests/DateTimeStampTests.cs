using CsCheck;

namespace Training.Proofs.Tests;

public class DateTimeStampTests
{
    [Theory]
    [InlineData("2026-03-01T08:00:00Z", "2026-03-01T08:00:00Z")]
    [InlineData("2026-03-01T08:00:00+02:00", "2026-03-01T06:00:00Z")]
    [InlineData("2026-03-01T08:00:00.2500-05:30", "2026-03-01T13:30:00.25Z")]
    [InlineData("2026-12-31T24:00:00Z", "2027-01-01T00:00:00Z")]
    [InlineData("2024-02-29T00:00:00.123456789Z", "2024-02-29T00:00:00.1234567Z")]
    public void An_instant_with_its_zone_is_read(string text, string utc) =>
        Assert.Equal(utc, DateTimeStamp.Format(DateTimeStamp.Parse(text).Value));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("2026-03-01")]
    [InlineData("2026-03-01T08:00:00")]
    [InlineData("2026-02-30T08:00:00Z")]
    [InlineData("2026-13-01T08:00:00Z")]
    [InlineData("2026-03-01T24:00:01Z")]
    [InlineData("2026-03-01T08:00:60Z")]
    [InlineData("2026-03-01T08:00:00+15:00")]
    [InlineData("2026-03-01T08:00:00Z\n")]
    [InlineData("0000-01-01T00:00:00Z")]
    [InlineData("9999-12-31T24:00:00Z")]
    [InlineData("２026-03-01T08:00:00Z")]
    public void Anything_else_is_refused(string? text) => Assert.False(DateTimeStamp.Parse(text).IsOk);

    [Fact]
    public void What_is_written_reads_back() =>
        Gen.Long[0, DateTime.MaxValue.Ticks].Sample(ticks =>
        {
            DateTimeOffset instant = new(ticks, TimeSpan.Zero);
            Assert.Equal(instant, DateTimeStamp.Parse(DateTimeStamp.Format(instant)).Value);
        });
}

using CsCheck;
using Training.Content.Competencies;

namespace Training.Content.Tests.Competencies;

public sealed class PeriodTests
{
    [Theory]
    [InlineData("P24M", 24, 0)]
    [InlineData("P2Y", 24, 0)]
    [InlineData("P4W", 0, 28)]
    [InlineData("P60D", 0, 60)]
    [InlineData("P1Y6M10D", 18, 10)]
    public void Years_months_weeks_and_days_are_read(string text, int months, int days)
    {
        Assert.True(Period.TryParse(text, out var period));
        Assert.Equal((months, days), (period.Months, period.Days));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("P")]
    [InlineData("24M")]
    [InlineData("P-1M")]
    [InlineData("P1.5M")]
    [InlineData("PT3H")]
    [InlineData("P1DT3H")]
    [InlineData("p24m")]
    [InlineData("P24M ")]
    [InlineData("P1M1Y")]
    [InlineData("P99999Y")]
    [InlineData("P२M")]
    public void Anything_else_is_no_period(string? text) => Assert.False(Period.TryParse(text, out _));

    [Fact]
    public void A_period_is_read_back_as_it_is_written() =>
        Gen.Select(Gen.Int[0, 1200], Gen.Int[0, 36_525]).Sample((months, days) =>
            Period.TryParse($"P{months}M{days}D", out var period)
            && Period.TryParse(period.ToString(), out var again)
            && again == period
            && (period.Months, period.Days) == (months, days));

    [Theory]
    [InlineData("P1M", "2026-01-31", "2026-02-28")]
    [InlineData("P24M", "2024-02-29", "2026-02-28")]
    [InlineData("P30D", "2026-11-25", "2026-12-25")]
    public void The_end_of_a_month_that_is_not_there_is_its_last_day(string text, string from, string to)
    {
        Assert.True(Period.TryParse(text, out var period));
        Assert.Equal(DateOnly.Parse(to, System.Globalization.CultureInfo.InvariantCulture), period.After(DateOnly.Parse(from, System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Before_goes_back_in_time()
    {
        Assert.True(Period.TryParse("P3M", out var period));
        Assert.Equal(new DateOnly(2026, 8, 25), period.Before(new(2026, 11, 25)));
    }
}

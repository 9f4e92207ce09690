using NodaTime;
using Training.Records.Certifying;
using static Training.Records.Tests.Ledger.LogScript;

namespace Training.Records.Tests.Ledger;

/// <summary>What a record is worth on a day, from the entries of the log and the text of its competency alone.</summary>
public sealed class StateOnTests
{
    // Month and year arithmetic with the end of a month: NodaTime, src/NodaTime.Test/LocalDateTest and PeriodTest.
    [Theory]
    [InlineData("2012-02-29", "P12M", "2013-02-28")]
    [InlineData("2012-02-29", "P48M", "2016-02-29")]
    [InlineData("2010-01-30", "P1M", "2010-02-28")]
    [InlineData("2011-01-30", "P1M", "2011-02-28")]
    [InlineData("2010-06-19", "P3M10D", "2010-09-29")]
    // Worked out by hand: from 31 August, six months end with February.
    [InlineData("2025-08-31", "P6M", "2026-02-28")]
    public void It_holds_up_to_and_including_the_day_that_the_period_leads_to(string issued, string period, string until)
    {
        var log = new LogScript().Issue(1, Day(issued));
        Assert.Equal(Day(until), log.StateOn(1, Day(issued), Competency(period))!.Until);
        Assert.Equal(RecordState.Due, log.StateOn(1, Day(until), Competency(period))!.State);
        Assert.Equal(RecordState.Expired, log.StateOn(1, Day(until).PlusDays(1), Competency(period))!.State);
    }

    // Worked out by hand: counted from the first day of the chain, 12 months are 31 August again; adding six months to
    // 28 February would give 28 August.
    [Fact]
    public void Months_are_counted_from_the_first_day_of_the_chain()
    {
        var log = new LogScript().Issue(1, new LocalDate(2025, 8, 31)).Issue(2, new LocalDate(2026, 2, 10), before: 1);
        var competency = Competency("P6M", "P1M");
        Assert.Equal(new(2026, 2, 28), log.StateOn(1, new(2026, 2, 1), competency)!.Until);
        Assert.Equal(new(2026, 8, 31), log.StateOn(2, new(2026, 2, 10), competency)!.Until);
    }

    // ISO 9606-1: valid from the day of the test, to be confirmed every six months or it lapses whatever its end. Dates
    // worked out from that rule for a test of 31 January 2025; (a) three years, (b) two years.
    [Theory]
    [InlineData("P36M", "2028-01-31")]
    [InlineData("P24M", "2027-01-31")]
    public void Confirmed_every_six_months_it_holds_until_its_end(string validFor, string until)
    {
        var log = new LogScript().Issue(1, new LocalDate(2025, 1, 31));
        var competency = Competency(validFor, "P3M", "P6M");
        Assert.Equal(new(2025, 7, 31), log.StateOn(1, new(2025, 1, 31), competency)!.ConfirmBy);
        for (var day = new LocalDate(2025, 7, 31); day < Day(until); day = day.PlusMonths(6).With(DateAdjusters.EndOfMonth))
            log.Happens(1, RecordEventKind.Confirmed, day);
        Assert.Equal(RecordState.Due, log.StateOn(1, Day(until), competency)!.State);
        Assert.Equal(Day(until), log.StateOn(1, Day(until), competency)!.Until);
        Assert.Equal(RecordState.Expired, log.StateOn(1, Day(until).PlusDays(1), competency)!.State);
    }

    // ISO 9606-1, the same test: not confirmed by 31 July 2025 it has lapsed on 1 August, though its end is years away.
    [Fact]
    public void Not_confirmed_in_time_it_lapses_the_day_after_whatever_its_end()
    {
        var log = new LogScript().Issue(1, new LocalDate(2025, 1, 31)).Happens(1, RecordEventKind.Confirmed, new(2025, 8, 1));
        var competency = Competency("P36M", "P3M", "P6M");
        Assert.Equal(RecordState.Current, log.StateOn(1, new(2025, 7, 31), competency)!.State);
        Assert.Equal(RecordState.Expired, log.StateOn(1, new(2025, 8, 1), competency)!.State);
    }

    // Europe/Istanbul has been at +03 the whole year since 2016, so its 1 July 2025 begins at 30 June, 21:00 UTC (tz database).
    // Pacific/Apia had no 30 December 2011 (tz database).
    // Europe/Berlin 2025-10-26 02:30 comes twice, at 00:30 and at 01:30 UTC, and is the same day each time (tz database).
    [Theory]
    [InlineData("Europe/Istanbul", "2025-06-30T20:59:59Z", "2025-06-30")]
    [InlineData("Europe/Istanbul", "2025-06-30T21:00:00Z", "2025-07-01")]
    [InlineData("Pacific/Apia", "2011-12-30T09:59:59Z", "2011-12-29")]
    [InlineData("Pacific/Apia", "2011-12-30T10:00:00Z", "2011-12-31")]
    [InlineData("Europe/Berlin", "2025-10-26T00:30:00Z", "2025-10-26")]
    [InlineData("Europe/Berlin", "2025-10-26T01:30:00Z", "2025-10-26")]
    [InlineData("America/Los_Angeles", "2009-03-08T07:59:59Z", "2009-03-07")]
    public void It_begins_on_the_day_that_its_shop_has(string zone, string at, string day)
    {
        var log = new LogScript(zone).Issue(1, NodaTime.Text.InstantPattern.General.Parse(at).Value);
        Assert.Equal(Day(day), log.StateOn(1, Day(day), Competency("P6M"))!.Since);
        Assert.Null(log.StateOn(1, Day(day).PlusDays(-1), Competency("P6M")));
    }

    // Days of 23 and of 25 hours, one that does not begin at midnight, and one that is not there (tz database).
    [Theory]
    [InlineData("Europe/Berlin", "2025-03-30", "2025-03-30T21:59:59Z")]
    [InlineData("Europe/Berlin", "2025-10-26", "2025-10-26T22:59:59Z")]
    [InlineData("America/Sao_Paulo", "2018-11-03", "2018-11-04T02:59:59Z")]
    [InlineData("Pacific/Apia", "2011-12-29", "2011-12-30T09:59:59Z")]
    public void The_last_second_of_a_day_is_the_one_before_the_next_day_begins(string zone, string day, string last)
    {
        var history = new LogScript(zone).Issue(1, Day("2011-01-01")).History.Records[Record(1)];
        Assert.Equal(NodaTime.Text.InstantPattern.General.Parse(last).Value, history.LastSecondOf(Day(day)));
    }

    [Fact]
    public void A_higher_revision_counts_from_its_publication_and_a_lower_or_the_same_one_never()
    {
        var competency = Competency("P24M", "P3M", renewWithin: "P60D");
        var log = new LogScript().Publish(1, new(2026, 1, 1)).Issue(1, new LocalDate(2026, 3, 2)).Publish(1, new(2026, 4, 1));
        Assert.Equal(RecordState.Current, log.StateOn(1, new(2026, 5, 1), competency)!.State);
        log.Publish(2, new(2026, 6, 1)).Publish(3, new(2026, 7, 1));
        Assert.Equal(RecordState.Current, log.StateOn(1, new(2026, 5, 31), competency)!.State);
        Assert.Equal((RecordState.Due, new(2026, 7, 31)), (log.StateOn(1, new(2026, 6, 1), competency)!.State, log.StateOn(1, new(2026, 6, 1), competency)!.Until));
    }

    [Fact]
    public void A_record_that_was_judged_by_an_older_revision_than_the_one_served_is_to_be_renewed_from_its_first_day()
    {
        var log = new LogScript().Publish(2, new(2026, 3, 1)).Issue(1, new LocalDate(2026, 3, 2));
        Assert.Equal(new(2026, 5, 1), log.StateOn(1, new(2026, 3, 2), Competency("P24M", "P3M", renewWithin: "P60D"))!.Until);
    }

    [Fact]
    public void What_happens_later_changes_nothing_about_an_earlier_day()
    {
        var competency = Competency("P24M", "P3M", "P6M", "P60D");
        var log = new LogScript().Issue(1, new LocalDate(2026, 3, 2));
        var before = Enumerable.Range(0, 60).Select(days => log.StateOn(1, new LocalDate(2026, 3, 2).PlusDays(days), competency)).ToList();
        log.Publish(2, new(2026, 5, 2)).Happens(1, RecordEventKind.Suspended, new(2026, 5, 3)).Issue(2, new LocalDate(2026, 5, 4), before: 1)
            .Happens(1, RecordEventKind.Withdrawn, new(2026, 5, 5));
        Assert.Equal(before, Enumerable.Range(0, 60).Select(days => log.StateOn(1, new LocalDate(2026, 3, 2).PlusDays(days), competency)));
        Assert.Equal(RecordState.Withdrawn, log.StateOn(1, new(2026, 5, 5), competency)!.State);
    }

    private static LocalDate Day(string text) => NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;
}

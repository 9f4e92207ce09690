using CsCheck;
using NodaTime;
using Training.Records.Certifying;
using Period = Training.Content.Competencies.Period;

namespace Training.Records.Tests.Certifying;

public sealed class RecordChainTests
{
    [Fact]
    public void A_record_holds_up_to_and_including_its_last_day()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M"));
        Assert.Null(chain.StateOn(0, new(2026, 3, 1)));
        Assert.Equal(RecordState.Current, State(chain, 2026, 3, 2));
        Assert.Equal(RecordState.Current, State(chain, 2027, 12, 1));
        Assert.Equal(RecordState.Due, State(chain, 2027, 12, 2));
        Assert.Equal(RecordState.Due, State(chain, 2028, 3, 2));
        Assert.Equal(RecordState.Expired, State(chain, 2028, 3, 3));
    }

    [Theory]
    [InlineData("2026-08-31", "P6M", "2027-02-28")]
    [InlineData("2027-08-31", "P6M", "2028-02-29")]
    [InlineData("2024-02-29", "P12M", "2025-02-28")]
    [InlineData("2026-01-31", "P1M", "2026-02-28")]
    [InlineData("2026-01-31", "P1M1D", "2026-03-01")]
    [InlineData("2026-03-02", "P4W", "2026-03-30")]
    public void A_months_end_that_does_not_exist_is_its_last_day(string issued, string period, string until) =>
        Assert.Equal(Day(until), Chain(new IssuedRecord(Day(issued), Of(period), Of("P1D"))).StateOn(0, Day(issued))!.Until);

    [Fact]
    public void A_short_month_takes_nothing_away_for_good()
    {
        var chain = Chain(Issued(2026, 8, 31, "P6M", "P1M"), Issued(2027, 2, 15, "P6M", "P1M"));
        Assert.Equal(new(2027, 2, 28), chain.StateOn(0, new(2027, 2, 1))!.Until);
        Assert.Equal(new(2027, 8, 31), chain.StateOn(1, new(2027, 2, 15))!.Until);
    }

    [Fact]
    public void Renewed_in_its_window_a_record_runs_on_from_the_old_end()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M"), Issued(2027, 12, 2, "P24M", "P3M"));
        Assert.Equal(new(2030, 3, 2), chain.StateOn(1, new(2027, 12, 2))!.Until);
    }

    [Theory]
    [InlineData("2027-12-01", "2029-12-01")]
    [InlineData("2028-03-03", "2030-03-03")]
    public void Renewed_before_its_window_or_after_its_end_it_runs_from_the_day_of_passing(string renewed, string until)
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M"), new IssuedRecord(Day(renewed), Of("P24M"), Of("P3M")));
        Assert.Equal(Day(until), chain.StateOn(1, Day(renewed))!.Until);
    }

    [Fact]
    public void A_withdrawn_or_suspended_record_is_not_run_on_from()
    {
        foreach (var kind in new[] { RecordEventKind.Withdrawn, RecordEventKind.Suspended })
        {
            var first = Issued(2026, 3, 2, "P24M", "P3M") with { Events = [(new(2028, 1, 1), kind)] };
            Assert.Equal(new(2030, 2, 1), Chain(first, Issued(2028, 2, 1, "P24M", "P3M")).StateOn(1, new(2028, 2, 1))!.Until);
        }
    }

    [Fact]
    public void A_suspended_record_holds_again_once_it_is_reinstated()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M") with
        {
            Events = [(new(2026, 5, 1), RecordEventKind.Suspended), (new(2026, 6, 1), RecordEventKind.Reinstated)],
        });
        Assert.Equal(RecordState.Current, State(chain, 2026, 4, 30));
        Assert.Equal(RecordState.Suspended, State(chain, 2026, 5, 1));
        Assert.Equal(RecordState.Suspended, State(chain, 2026, 5, 31));
        Assert.Equal(RecordState.Current, State(chain, 2026, 6, 1));
    }

    [Fact]
    public void A_withdrawn_record_never_holds_again_and_stays_withdrawn_after_its_end()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M") with
        {
            Events = [(new(2026, 5, 1), RecordEventKind.Withdrawn), (new(2026, 6, 1), RecordEventKind.Reinstated)],
        });
        Assert.Equal(RecordState.Withdrawn, State(chain, 2026, 7, 1));
        Assert.Equal(RecordState.Withdrawn, State(chain, 2030, 1, 1));
    }

    [Fact]
    public void A_suspended_record_expires_all_the_same()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M") with { Events = [(new(2026, 5, 1), RecordEventKind.Suspended)] });
        Assert.Equal(RecordState.Suspended, State(chain, 2028, 3, 2));
        Assert.Equal(RecordState.Expired, State(chain, 2028, 3, 3));
    }

    [Fact]
    public void Confirmations_are_due_so_many_months_after_the_day_of_issue_whenever_the_last_one_was_given()
    {
        var record = Issued(2025, 1, 31, "P36M", "P3M") with { ConfirmEvery = Of("P6M") };
        LocalDate[] given = [new(2025, 7, 31), new(2025, 11, 2), new(2026, 7, 1), new(2026, 8, 15)];
        var chain = Chain(record with { Events = [.. given.Select(day => (day, RecordEventKind.Confirmed))] });
        Assert.Equal(
            ["2025-07-31", "2026-01-31", "2026-07-31", "2027-01-31", "2027-07-31"],
            given.Prepend(new(2025, 1, 31)).Select(day => NodaTime.Text.LocalDatePattern.Iso.Format(chain.StateOn(0, day)!.ConfirmBy!.Value)));
        var march = Issued(2026, 3, 31, "P36M", "P3M") with { ConfirmEvery = Of("P18M"), Events = [(new(2027, 9, 30), RecordEventKind.Confirmed)] };
        Assert.Equal(new LocalDate(2029, 3, 31), Chain(march).StateOn(0, new(2027, 9, 30))!.ConfirmBy);
    }

    [Fact]
    public void A_second_confirmation_in_one_period_changes_nothing()
    {
        var record = Issued(2026, 3, 2, "P36M", "P3M") with { ConfirmEvery = Of("P6M") };
        var once = Chain(record with { Events = [(new(2026, 3, 2), RecordEventKind.Confirmed)] });
        var often = Chain(record with { Events = [(new(2026, 3, 2), RecordEventKind.Confirmed), (new(2026, 6, 1), RecordEventKind.Confirmed), (new(2026, 9, 2), RecordEventKind.Confirmed)] });
        Assert.Equal(new LocalDate(2027, 3, 2), once.StateOn(0, new(2026, 9, 2))!.ConfirmBy);
        Assert.Equal(new LocalDate(2027, 3, 2), often.StateOn(0, new(2026, 9, 2))!.ConfirmBy);
    }

    [Fact]
    public void The_next_deadline_is_the_first_of_a_plain_list_whose_period_nobody_confirmed() => Gen.Select(
        Gen.Int[0, 1500], Periods(18, 40), Gen.Int[0, 1400].Array[0, 12]).Sample((issued, every, given) =>
    {
        var on = new LocalDate(2026, 8, 20).PlusDays(issued);
        var days = given.Order().Select(day => on.PlusDays(day)).ToList();
        var chain = Chain(new IssuedRecord(on, Of("P60M"), Of("P3M")) { ConfirmEvery = every, Events = [.. days.Select(day => (day, RecordEventKind.Confirmed))] });
        List<LocalDate> deadlines = [on.PlusDays(-1), .. Enumerable.Range(1, 14).Select(k => on.PlusMonths(k * every.Months).PlusDays(k * every.Days))];
        var first = 1;
        while (days.Any(day => day > deadlines[first - 1] && day <= deadlines[first])) first++;
        return chain.StateOn(0, on.PlusDays(1400))!.ConfirmBy == deadlines[first];
    });

    [Fact]
    public void An_unconfirmed_record_lapses_the_day_after_and_a_late_confirmation_revives_nothing()
    {
        var record = Issued(2026, 3, 2, "P24M", "P3M") with { ConfirmEvery = Of("P6M") };
        Assert.Equal(RecordState.Current, State(Chain(record), 2026, 9, 2));
        Assert.Equal(RecordState.Expired, State(Chain(record), 2026, 9, 3));
        var confirmed = Chain(record with { Events = [(new(2026, 9, 2), RecordEventKind.Confirmed)] });
        Assert.Equal(RecordState.Current, State(confirmed, 2027, 3, 2));
        Assert.Equal(RecordState.Expired, State(confirmed, 2027, 3, 3));
        var late = Chain(record with { Events = [(new(2026, 9, 3), RecordEventKind.Confirmed)] });
        Assert.Equal(RecordState.Expired, State(late, 2026, 9, 4));
    }

    [Fact]
    public void A_new_revision_makes_a_record_due_and_ends_it_after_the_time_that_is_given()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M") with { Revised = (new(2026, 6, 1), Of("P60D")) });
        Assert.Equal(new(2028, 3, 2), chain.StateOn(0, new(2026, 5, 31))!.Until);
        Assert.Equal(RecordState.Current, State(chain, 2026, 5, 31));
        Assert.Equal(RecordState.Due, State(chain, 2026, 6, 1));
        Assert.Equal(RecordState.Due, State(chain, 2026, 7, 31));
        Assert.Equal(RecordState.Expired, State(chain, 2026, 8, 1));
    }

    [Fact]
    public void A_revision_shortly_before_the_end_gives_no_time_beyond_it()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M") with { Revised = (new(2028, 2, 20), Of("P60D")) });
        Assert.Equal(new(2028, 3, 2), chain.StateOn(0, new(2028, 2, 20))!.Until);
    }

    [Fact]
    public void The_newest_record_of_a_day_is_the_one_that_counts()
    {
        var chain = Chain(Issued(2026, 3, 2, "P24M", "P3M"), Issued(2027, 12, 2, "P24M", "P3M"));
        Assert.Null(chain.NewestOn(new(2026, 3, 1)));
        Assert.Equal(0, chain.NewestOn(new(2027, 12, 1)));
        Assert.Equal(1, chain.NewestOn(new(2027, 12, 2)));
    }

    [Fact]
    public void Every_day_agrees_with_a_walk_through_the_days_one_by_one() => Histories.Sample(history =>
    {
        var chain = new RecordChain(history);
        for (var index = 0; index < history.Count; index++)
        {
            var walk = new DayByDay(history).Walk(index, 600);
            for (var offset = 0; offset < walk.Count; offset++)
            {
                var day = history[index].IssuedOn.PlusDays(offset);
                if (chain.StateOn(index, day)!.State != walk[offset]) return false;
            }
        }

        return true;
    }, iter: 100);

    [Fact]
    public void The_last_day_that_is_told_is_the_last_day_if_nothing_more_happens() => Gen.Select(Histories, Gen.Int[0, 900]).Sample((history, offset) =>
    {
        var index = history.Count - 1;
        var today = history[index].IssuedOn.PlusDays(offset);
        var until = new RecordChain(history).StateOn(index, today)!.Until;
        if (until < today) return true;
        var known = history[index];
        known = known with
        {
            Events = [.. known.Events.Where(entry => entry.On <= today)],
            Revised = known.Revised is { } revised && revised.On <= today ? revised : null,
        };
        var chain = new RecordChain([.. history.Take(index), known]);
        return chain.StateOn(index, until)!.State != RecordState.Expired &&
            chain.StateOn(index, until.PlusDays(1))!.State is RecordState.Expired or RecordState.Withdrawn;
    });

    private static Gen<T?> OrNone<T>(Gen<T> some) where T : struct =>
        Gen.Select(Gen.Bool, some, (isThere, value) => isThere ? value : (T?)null);

    private static Gen<Period> Periods(int months, int days) =>
        Gen.Select(Gen.Int[0, months], Gen.Int[0, days], (m, d) => Of($"P{Math.Max(m, d == 0 ? 1 : 0)}M{d}D"));

    private static readonly Gen<IssuedRecord> Records = Gen.Select(
        Gen.Int[0, 800],
        Periods(14, 20),
        Periods(2, 10),
        OrNone(Periods(5, 10)),
        OrNone(Gen.Select(Gen.Int[0, 800], Periods(1, 40))),
        Gen.Select(Gen.Int[0, 500], Gen.Int[0, 8].Select(kind => kind switch
        {
            < 2 => RecordEventKind.Suspended,
            < 4 => RecordEventKind.Reinstated,
            < 8 => RecordEventKind.Confirmed,
            _ => RecordEventKind.Withdrawn,
        })).Array[0, 5],
        (issued, valid, renew, confirm, revised, events) =>
        {
            var on = new LocalDate(2026, 8, 20).PlusDays(issued);
            return new IssuedRecord(on, valid, renew)
            {
                ConfirmEvery = confirm,
                Revised = revised is var (after, within) ? (on.PlusDays(after), within) : null,
                Events = [.. events.OrderBy(entry => entry.Item1).Select(entry => (on.PlusDays(entry.Item1), entry.Item2))],
            };
        });

    private static readonly Gen<IReadOnlyList<IssuedRecord>> Histories =
        Records.Array[1, 4].Select(records => (IReadOnlyList<IssuedRecord>)[.. records.OrderBy(record => record.IssuedOn)]);

    private static RecordChain Chain(params IssuedRecord[] records) => new(records);

    private static IssuedRecord Issued(int year, int month, int day, string valid, string renew) =>
        new(new(year, month, day), Of(valid), Of(renew));

    private static RecordState State(RecordChain chain, int year, int month, int day) => chain.StateOn(0, new(year, month, day))!.State;

    private static LocalDate Day(string text) => NodaTime.Text.LocalDatePattern.Iso.Parse(text).Value;

    private static Period Of(string text) => Period.TryParse(text, out var period) ? period : throw new ArgumentException(text);
}

/// <summary>
/// The oracle: goes through the days of a record one by one, with what holds kept in variables, on the calendar of the
/// base library.
/// </summary>
internal sealed class DayByDay(IReadOnlyList<IssuedRecord> history)
{
    public List<RecordState> Walk(int index, int days)
    {
        var record = history[index];
        var (anchor, months, extraDays) = Begin(index);
        var end = anchor.AddMonths(months).AddDays(extraDays);
        var opens = end.AddMonths(-record.RenewFrom.Months).AddDays(-record.RenewFrom.Days);
        var (isSuspended, isWithdrawn, isOver, isRevised) = (false, false, false, false);
        var issued = Date(record.IssuedOn);
        List<DateOnly> deadlines = record.ConfirmEvery is { } every
            ? [.. Enumerable.Range(1, 10).Select(k => issued.AddMonths(k * every.Months).AddDays(k * every.Days))]
            : [DateOnly.MaxValue];
        var open = 0;
        var states = new List<RecordState>();
        for (var day = issued; states.Count <= days; day = day.AddDays(1))
        {
            if (record.Revised is { } revised && Date(revised.On) == day)
            {
                isRevised = true;
                var last = revised.Within.After(day);
                if (last < end) end = last;
            }

            if (day > end || day > deadlines[open]) isOver = true;
            foreach (var (_, kind) in record.Events.Where(entry => Date(entry.On) == day))
                switch (kind)
                {
                    case RecordEventKind.Suspended: isSuspended = true; break;
                    case RecordEventKind.Reinstated: isSuspended = false; break;
                    case RecordEventKind.Withdrawn: isWithdrawn = true; break;
                    case RecordEventKind.Confirmed when record.ConfirmEvery is not null && day <= deadlines[open] && (open == 0 || day > deadlines[open - 1]): open++; break;
                }

            states.Add(isWithdrawn ? RecordState.Withdrawn
                : isOver ? RecordState.Expired
                : isSuspended ? RecordState.Suspended
                : isRevised || day >= opens ? RecordState.Due
                : RecordState.Current);
        }

        return states;
    }

    private (DateOnly Anchor, int Months, int Days) Begin(int index)
    {
        var record = history[index];
        var fresh = (Date(record.IssuedOn), record.ValidFor.Months, record.ValidFor.Days);
        if (index == 0) return fresh;
        var before = history[index - 1];
        var (anchor, months, days) = Begin(index - 1);
        var opens = anchor.AddMonths(months).AddDays(days).AddMonths(-before.RenewFrom.Months).AddDays(-before.RenewFrom.Days);
        var gone = Date(record.IssuedOn).DayNumber - Date(before.IssuedOn).DayNumber;
        var stood = Walk(index - 1, gone)[gone];
        return stood is RecordState.Current or RecordState.Due && Date(record.IssuedOn) >= opens
            ? (anchor, months + record.ValidFor.Months, days + record.ValidFor.Days)
            : fresh;
    }

    private static DateOnly Date(LocalDate date) => date.ToDateOnly();
}

using CsCheck;
using NodaTime;
using Training.Records.Covering;
using Period = Training.Content.Competencies.Period;

namespace Training.Records.Tests.Covering;

public sealed class RenewalPlanTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);

    private static readonly RenewalTerms TwoYears = new(Of("P24M"), Of("P3M"), 14);

    [Fact]
    public void Nobody_is_sent_while_enough_people_hold()
    {
        Assert.Empty(RenewalPlan.Fewest([Ends(30), Ends(400), Ends(400)], 2, TwoYears, Today, Today.PlusDays(365)));
        Assert.Empty(RenewalPlan.Fewest([Ends(30)], 0, TwoYears, Today, Today.PlusDays(365)));
    }

    [Fact]
    public void Whoever_lapses_last_before_the_lack_is_sent_for_theirs_reaches_furthest()
    {
        var plan = RenewalPlan.Fewest([Ends(30), Ends(60), Ends(90)], 1, TwoYears, Today, Today.PlusDays(365));
        Assert.Equal(2, Assert.Single(plan).Holder);
    }

    [Fact]
    public void Somebody_is_sent_two_weeks_before_the_end_and_the_new_time_runs_on_from_the_old_end()
    {
        var renewal = Assert.Single(RenewalPlan.Fewest([Ends(100)], 1, TwoYears, Today, Today.PlusDays(365)));
        Assert.Equal(Today.PlusDays(86), renewal.On);
        Assert.Equal(Today.PlusDays(100), renewal.LastDay);
        Assert.Equal(Today.PlusDays(100).PlusMonths(24), renewal.HoldsUntil);
        Assert.Equal(Today.PlusDays(100).PlusMonths(-3), renewal.From);
    }

    [Fact]
    public void Who_ends_within_two_weeks_is_sent_today()
    {
        var renewal = Assert.Single(RenewalPlan.Fewest([Ends(5)], 1, TwoYears, Today, Today.PlusDays(365)));
        Assert.Equal((Today, Today), (renewal.From, renewal.On));
    }

    [Fact]
    public void A_window_that_is_shorter_than_two_weeks_is_waited_for()
    {
        var term = new HeldTerm(Today.PlusDays(100), Today.PlusDays(95));
        Assert.Equal(Today.PlusDays(95), Assert.Single(RenewalPlan.Fewest([term], 1, TwoYears, Today, Today.PlusDays(365))).On);
    }

    [Fact]
    public void A_record_that_a_revision_has_shortened_is_renewed_from_the_day_of_passing()
    {
        var term = new HeldTerm(Today.PlusDays(60), Today.PlusDays(300));
        var renewal = Assert.Single(RenewalPlan.Fewest([term], 1, TwoYears, Today, Today.PlusDays(365)));
        Assert.Equal(Today.PlusDays(46), renewal.On);
        Assert.Equal(renewal.On.PlusMonths(24), renewal.HoldsUntil);
        Assert.Equal(Today, renewal.From);
    }

    [Fact]
    public void Where_fewer_hold_than_are_needed_all_of_them_are_kept() =>
        Assert.Equal([1, 0], RenewalPlan.Fewest([Ends(90), Ends(30)], 5, TwoYears, Today, Today.PlusDays(365)).Select(renewal => renewal.Holder));

    [Fact]
    public void A_short_time_is_renewed_again_and_again()
    {
        var terms = new RenewalTerms(Of("P6M"), Of("P1M"), 14);
        Assert.Equal(2, RenewalPlan.Fewest([Ends(30)], 1, terms, Today, Today.PlusDays(365)).Count);
    }

    // Every order of renewals on every day is tried by the rules of a record's time, so nothing of the greedy choice is assumed.
    [Fact]
    public void No_plan_has_fewer_renewals_and_this_one_never_lacks_anybody()
    {
        var holder = Gen.Select(Gen.Int[0, 9], Gen.Int[-3, 3]).Select((end, opens) => new HeldTerm(Today.PlusDays(end), Today.PlusDays(end + opens)));
        var cases = Gen.Select(holder.Array[1, 3], Gen.Int[1, 3], Gen.Int[3, 7], Gen.Int[0, 2], Gen.Int[4, 12]);
        var renewals = 0;
        cases.Sample((holders, need, validFor, renewFrom, days) =>
        {
            var terms = new RenewalTerms(Of($"P{validFor}D"), Of($"P{renewFrom}D"), 0);
            var lastDay = Today.PlusDays(days);
            var plan = RenewalPlan.Fewest(holders, need, terms, Today, lastDay);
            var kept = Math.Min(need, holders.Length);
            Interlocked.Add(ref renewals, plan.Count);
            return plan.Count == FewestByTryingAll(holders, kept, validFor, renewFrom, lastDay) && HoldsUp(holders, plan, kept, validFor, renewFrom, lastDay);
        }, iter: 1_000);
        Assert.True(renewals > 500, $"Only {renewals} renewals were planned in all: the cases ask for too little.");
    }

    private static HeldTerm Ends(int days) => new(Today.PlusDays(days), Today.PlusDays(days).PlusMonths(-3));

    private static Period Of(string text) => Period.TryParse(text, out var period) ? period : throw new ArgumentException(text);

    /// <summary>Whether the planned renewals, carried out on their days, leave enough people on every day.</summary>
    private static bool HoldsUp(HeldTerm[] holders, IReadOnlyList<PlannedRenewal> plan, int need, int validFor, int renewFrom, LocalDate lastDay)
    {
        var held = holders.ToArray();
        for (var day = Today; day <= lastDay; day = day.PlusDays(1))
        {
            foreach (var renewal in plan.Where(renewal => renewal.On == day))
            {
                if (held[renewal.Holder].Ends < day || day < Today || renewal.From > day || renewal.LastDay != held[renewal.Holder].Ends) return false;
                held[renewal.Holder] = Renewed(held[renewal.Holder], day, validFor, renewFrom);
                if (held[renewal.Holder].Ends != renewal.HoldsUntil) return false;
            }

            if (held.Count(term => term.Ends >= day) < need) return false;
        }

        return true;
    }

    private static int FewestByTryingAll(HeldTerm[] holders, int need, int validFor, int renewFrom, LocalDate lastDay)
    {
        var states = new Dictionary<long, (HeldTerm[] Held, int Cost)> { [0] = (holders, 0) };
        for (var day = Today; day <= lastDay; day = day.PlusDays(1))
        {
            var next = new Dictionary<long, (HeldTerm[] Held, int Cost)>();
            foreach (var (held, cost) in states.Values)
                for (var sent = 0; sent < 1 << held.Length; sent++)
                {
                    // Whoever has lapsed is not sent any more, and whoever holds to the last day need not be.
                    if (held.Where((term, index) => (sent & (1 << index)) != 0 && (term.Ends < day || term.Ends >= lastDay)).Any()) continue;
                    HeldTerm[] then = [.. held.Select((term, index) => (sent & (1 << index)) == 0 ? term : Renewed(term, day, validFor, renewFrom))];
                    if (then.Count(term => term.Ends >= day) < need) continue;
                    var key = then.Aggregate(1L, (all, term) => (all * 4096) + (term.Ends >= lastDay ? 0 : ((term.Ends - Today).Days * 64) + (term.RunsOnFrom - Today).Days + 8));
                    var total = cost + int.PopCount(sent);
                    if (!next.TryGetValue(key, out var known) || known.Cost > total) next[key] = (then, total);
                }

            states = next;
        }

        return states.Values.Min(state => state.Cost);
    }

    private static HeldTerm Renewed(HeldTerm term, LocalDate on, int validFor, int renewFrom)
    {
        var ends = (on >= term.RunsOnFrom ? term.Ends : on).PlusDays(validFor);
        return new(ends, ends.PlusDays(-renewFrom));
    }
}

using NodaTime;
using Period = Training.Content.Competencies.Period;

namespace Training.Records.Covering;

/// <summary>A record that holds today, as far as planning depends on it.</summary>
/// <param name="Ends">The last day on which it holds, not before today; a confirmation that it needs until then is given in time.</param>
/// <param name="RunsOnFrom">The first day on which a renewal runs on from that end. Later than the end where a new revision has shortened the record.</param>
public readonly record struct HeldTerm(LocalDate Ends, LocalDate RunsOnFrom);

/// <summary>What a renewal brings.</summary>
/// <param name="ValidFor">How long the renewed record holds, more than nothing.</param>
/// <param name="RenewFrom">How long before its end it may be renewed again.</param>
/// <param name="DaysInHand">How many days before the end somebody is sent, so that a paper that is failed can be sat again.</param>
public sealed record RenewalTerms(Period ValidFor, Period RenewFrom, int DaysInHand);

/// <summary>That somebody is to renew.</summary>
/// <param name="Holder">Who, as a place in the list that was planned for.</param>
/// <param name="From">The first day on which it costs no time: renewal is open; not before today.</param>
/// <param name="On">The day to pass on: as late as is safe.</param>
/// <param name="LastDay">The last day on which the old record holds.</param>
/// <param name="HoldsUntil">The last day of the renewed record, if it is passed on <paramref name="On"/>.</param>
public readonly record struct PlannedRenewal(int Holder, LocalDate From, LocalDate On, LocalDate LastDay, LocalDate HoldsUntil);

/// <summary>
/// Whom to send when, so that a shop never has fewer people than it needs: the fewest renewals, each as late as is safe.
/// <para>
/// Greedy from the first day on: on the first day on which the number falls below the need, somebody whose record has
/// ended by then must have been renewed; take the one whose renewed record would reach furthest. That is the fewest by the
/// usual exchange: let a best plan agree with the choices so far. If it renews the one chosen here as well, nothing is to
/// be shown. If it does not, it renews somebody else whose record ends before that day; give that one's renewals to the
/// one chosen here. Every renewal of a competency brings the same time, so the chosen one's record reaches at least as
/// far after each of them, and before that day there was no lack: the plan is still good, and no longer. (The same greedy
/// choice covers points by the fewest intervals; J. Kleinberg and É. Tardos, Algorithm Design, 2006, §4.1.)
/// </para>
/// <para>
/// Nobody is planned to lapse and come back. Months are counted from the end of each record, not of the first: where a short
/// month lies between, the real end is up to three days later than the one here.
/// </para>
/// </summary>
public static class RenewalPlan
{
    /// <summary>The fewest renewals by which the need is met on every day, by the day of passing.</summary>
    /// <param name="holders">The records that hold today.</param>
    /// <param name="need">How many must hold on each day; where fewer hold today, all of them are kept.</param>
    /// <param name="terms">What a renewal brings.</param>
    /// <param name="today">The first day.</param>
    /// <param name="lastDay">The last day that is planned for.</param>
    public static IReadOnlyList<PlannedRenewal> Fewest(
        IReadOnlyList<HeldTerm> holders, int need, RenewalTerms terms, LocalDate today, LocalDate lastDay)
    {
        ArgumentNullException.ThrowIfNull(holders);
        ArgumentNullException.ThrowIfNull(terms);
        if (terms.ValidFor.IsZero) throw new ArgumentException("A renewal that holds for no time cannot be planned with.", nameof(terms));
        var kept = Math.Min(need, holders.Count);
        var plan = new List<PlannedRenewal>();
        if (kept <= 0) return plan;
        var held = holders.ToArray();
        PlannedRenewal[] next = [.. held.Select((term, holder) => Renewal(holder, term, terms, today))];
        // Kept in the order of their ends, so that neither the first lack nor who may be renewed before it has to be searched for.
        List<int> byEnd = [.. Enumerable.Range(0, held.Length).OrderBy(holder => held[holder].Ends)];
        var ends = Comparer<int>.Create((one, other) => held[one].Ends.CompareTo(held[other].Ends));
        while (true)
        {
            var firstLack = held[byEnd[^kept]].Ends.PlusDays(1);
            if (firstLack > lastDay) return [.. plan.OrderBy(renewal => renewal.On).ThenBy(renewal => renewal.Holder)];
            var place = Furthest(byEnd, next, firstLack);
            var chosen = next[byEnd[place]];
            plan.Add(chosen);
            byEnd.RemoveAt(place);
            held[chosen.Holder] = new(chosen.HoldsUntil, Before(chosen.HoldsUntil, terms.RenewFrom));
            next[chosen.Holder] = Renewal(chosen.Holder, held[chosen.Holder], terms, today);
            var later = byEnd.BinarySearch(chosen.Holder, ends);
            byEnd.Insert(later < 0 ? ~later : later, chosen.Holder);
        }
    }

    /// <summary>The place of the one, among those whose records end before a day, whose renewed record reaches furthest; of several the first in the list that was planned for.</summary>
    private static int Furthest(List<int> byEnd, PlannedRenewal[] next, LocalDate firstLack)
    {
        var furthest = 0;
        for (var place = 1; place < byEnd.Count && next[byEnd[place]].LastDay < firstLack; place++)
        {
            var (one, best) = (next[byEnd[place]], next[byEnd[furthest]]);
            if (one.HoldsUntil > best.HoldsUntil || (one.HoldsUntil == best.HoldsUntil && one.Holder < best.Holder)) furthest = place;
        }

        return furthest;
    }

    private static PlannedRenewal Renewal(int holder, HeldTerm term, RenewalTerms terms, LocalDate today)
    {
        var on = LocalDate.Max(today, term.Ends.PlusDays(-terms.DaysInHand));
        // Where the window is shorter than the time in hand, the first day of the window is the safest.
        if (term.RunsOnFrom <= term.Ends) on = LocalDate.Max(on, term.RunsOnFrom);
        var until = Until(on);
        if (until <= term.Ends) (on, until) = (term.Ends, Until(term.Ends));
        var from = term.RunsOnFrom <= term.Ends ? LocalDate.Max(today, term.RunsOnFrom) : today;
        return new(holder, LocalDate.Min(from, on), on, term.Ends, until);

        LocalDate Until(LocalDate passedOn) => After(passedOn >= term.RunsOnFrom ? term.Ends : passedOn, terms.ValidFor);
    }

    private static LocalDate After(LocalDate date, Period period) => date.PlusMonths(period.Months).PlusDays(period.Days);

    private static LocalDate Before(LocalDate date, Period period) => date.PlusMonths(-period.Months).PlusDays(-period.Days);
}

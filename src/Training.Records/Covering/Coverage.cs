using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Covering;

/// <summary>Coverage: who in a shop may do what from today on, what lapses next, and whom to send when.</summary>
public sealed class Coverage
{
    /// <summary>How far ahead is looked, in months.</summary>
    public const int Months = 12;

    /// <summary>The most people that can be needed.</summary>
    public const int MostPeople = 200;

    // Common practice, no published source: two weeks are enough to wait the day after a failed paper and to be observed again.
    private const int DaysInHand = 14;

    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly RecordLines lines;
    private readonly TimeProvider clock;

    internal Coverage(TrainingDbContext db, Library library, RecordLines lines, TimeProvider clock) =>
        (this.db, this.library, this.lines, this.clock) = (db, library, lines, clock);

    /// <summary>The own shop's coverage (owners).</summary>
    /// <param name="actor">The owner.</param>
    public async Task<Outcome<ShopCoverage, Refusal>> Look(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Owner) || actor.Shop is not { } id) return Refused.NotAllowed;
        var shop = await db.Shops.AsNoTracking().SingleAsync(known => known.Id == id);
        var people = db.Users.AsNoTracking().WithinReach(actor).Technicians(db);
        var needs = await db.Set<ShopNeed>().AsNoTracking().Where(need => need.ShopId == id)
            .ToDictionaryAsync(need => need.Competency, need => need.People);
        var today = lines.Today(shop);
        var lastDay = today.PlusMonths(Months);
        var histories = (await lines.Held(people)).ToLookup(history => history.Competency);
        var served = library.Current.Content.Competencies;
        var competencies = served.Select(competency => Of(competency.Id, competency.Title, competency)).ToList();
        foreach (var former in histories.Select(of => of.Key).Where(held => served.All(competency => competency.Id != held)))
        {
            var of = Of(former, histories[former].First().Records[^1].CompetencyTitle, null);
            if (of.Holding.Count > 0 || of.Need > 0) competencies.Add(of);
        }

        return new ShopCoverage(today, lastDay, competencies);

        CompetencyCoverage Of(CompetencyId competency, string title, Competency? renewedBy) => CoverageOf(
            competency, title, renewedBy, needs.GetValueOrDefault(competency), histories[competency], today, lastDay);
    }

    /// <summary>Says how many people the own shop needs for each competency (owners). What is not named stays as it was.</summary>
    /// <param name="actor">The owner.</param>
    /// <param name="needs">How many people for each competency, from 0 to <see cref="MostPeople"/>.</param>
    public async Task<Outcome<ShopCoverage, Refusal>> SetNeeds(Actor actor, IReadOnlyDictionary<CompetencyId, int> needs)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(needs);
        if (!actor.Is(Roles.Owner) || actor.Shop is not { } shop) return Refused.NotAllowed;
        foreach (var (competency, people) in needs)
            if (people is < 0 or > MostPeople) return new Refusal($"A shop needs from 0 to {MostPeople} people; write a whole number.") { About = competency.Value };
        await using var change = await db.BeginChange();
        var known = await db.Set<ShopNeed>().Where(need => need.ShopId == shop).ToDictionaryAsync(need => need.Competency);
        if (needs.Keys.Any(competency => !known.ContainsKey(competency) && library.Current.Content.FindCompetency(competency) is null))
            return Refused.NotFound;
        var now = clock.Instant();
        foreach (var (competency, people) in needs)
        {
            if (!known.TryGetValue(competency, out var need))
                db.Add(new ShopNeed { ShopId = shop, Competency = competency, People = people, SetById = actor.Person, SetAt = now });
            else if (need.People != people)
                (need.People, need.SetById, need.SetAt) = (people, actor.Person, now);
        }

        await db.SaveChangesAsync();
        await change.CommitAsync();
        return await Look(actor);
    }

    private static CompetencyCoverage CoverageOf(
        CompetencyId competency, string title, Competency? renewedBy, int need,
        IEnumerable<HeldCompetency> histories, LocalDate today, LocalDate lastDay)
    {
        var counting = histories.Select(history => (history, line: history.LineOn(today))).Where(of => of.line is not null)
            .Select(of => (of.history, line: of.line!)).ToList();
        var holding = counting.Where(of => of.line.Standing!.Holds)
            .OrderBy(of => of.line.Standing!.Until).ThenBy(of => of.line.Name, StringComparer.Ordinal).ToList();
        var coverage = new CompetencyCoverage(
            competency, title, need,
            [.. holding.Select(of => of.line)],
            [.. counting.Where(of => !of.line.Standing!.Holds).Select(of => of.line).OrderBy(line => line.Name, StringComparer.Ordinal)],
            CoverageForecast.Steps(holding.Select(of => of.line.Standing!.Until), today, lastDay));
        if (renewedBy is null) return coverage;
        var terms = holding.Select(of => of.history.Chain.TermOn(of.history.Chain.NewestOn(today)!.Value, today))
            .Select(term => new HeldTerm(term.Ends, term.RunsOnFrom)).ToList();
        var plan = RenewalPlan.Fewest(terms, need, new(renewedBy.ValidFor, renewedBy.RenewFrom, DaysInHand), today, lastDay);
        var sent = new HashSet<int>();
        return coverage with
        {
            Renewals = [.. plan.Select(renewal => new AdvisedRenewal(holding[renewal.Holder].line, renewal, sent.Add(renewal.Holder)))],
            Confirmations = need == 0 ? [] : [.. holding.Where((of, index) => of.line.Standing!.ConfirmBy is { } by && by < terms[index].Ends && by <= lastDay)
                .Select(of => of.line).OrderBy(line => line.Standing!.ConfirmBy)],
        };
    }
}

using Microsoft.EntityFrameworkCore;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Records.Learning;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing;

namespace Training.Records.Overviews;

/// <summary>What a technician does next, and who in a shop may do what.</summary>
public sealed class Overview
{
    private readonly TrainingDbContext db;
    private readonly Library library;
    private readonly Reading reading;
    private readonly PaperClosing closing;
    private readonly PassedPapers passedPapers;
    private readonly RecordLines lines;
    private readonly TimeProvider clock;

    internal Overview(
        TrainingDbContext db,
        Library library,
        Reading reading,
        PaperClosing closing,
        PassedPapers passedPapers,
        RecordLines lines,
        TimeProvider clock)
    {
        (this.db, this.library, this.reading, this.closing) = (db, library, reading, closing);
        (this.passedPapers, this.lines, this.clock) = (passedPapers, lines, clock);
    }

    /// <summary>What a technician has done and does next, competency by competency: one's own, or that of somebody within reach. Empty for who is no technician.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">The technician.</param>
    public async Task<Outcome<IReadOnlyList<CompetencyPath>, Refusal>> WhatNext(Actor actor, PersonId person)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (await db.PersonInSight(actor, person) is not { } found) return Refused.NotFound;
        if (found.ShopId is not { } shopId || !await db.Users.Where(known => known.Id == person).Technicians(db).AnyAsync())
            return new List<CompetencyPath>();
        await closing.CloseOverdue();
        var past = new Past(
            await db.Shops.AsNoTracking().SingleAsync(shop => shop.Id == shopId),
            (await reading.Newest(person)).Where(read => read.IsAsServedNow).Select(read => read.Module).ToHashSet(),
            await db.PracticeTries.AsNoTracking().Where(attempt => attempt.PersonId == person)
                .GroupBy(attempt => new { attempt.Scenario, attempt.Kind })
                .Select(of => new Tried(of.Key.Scenario, of.Key.Kind, of.Count(), of.Any(attempt => attempt.Accepted))).ToListAsync(),
            await db.Papers.AsNoTracking().Where(paper => paper.PersonId == person).ToListAsync(),
            await passedPapers.Awaiting(db.Papers.Where(paper => paper.PersonId == person), clock.Instant()),
            await db.Runs.AsNoTracking().Where(run => run.TechnicianId == person).ToListAsync(),
            await lines.Of([person], null));
        var paths = new List<CompetencyPath>();
        foreach (var competency in library.Current.Content.Competencies) paths.Add(await Path(person, competency, past));
        return paths;
    }

    /// <summary>People × competencies within reach (owners; examiners, trainers and administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="on">The day; null for today in each shop's time zone.</param>
    /// <param name="shop">One shop alone; null for all within reach.</param>
    public async Task<Outcome<CompetencyTable, Refusal>> WhoMayDoWhat(Actor actor, LocalDate? on = null, ShopId? shop = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.AnswersForOthers) return Refused.NotAllowed;
        var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(known => known.Id);
        if (shop is { } one && (!actor.Reaches(one) || !shops.ContainsKey(one))) return Refused.NotFound;
        var technicians = db.Users.AsNoTracking().WithinReach(actor).Technicians(db).Where(person => person.ShopId != null);
        if (shop is not null) technicians = technicians.Where(person => person.ShopId == shop);
        var people = await technicians.ToListAsync();
        var counting = (await lines.Of([.. people.Select(person => person.Id)], on)).Where(line => line.IsNewest)
            .ToDictionary(line => (line.Person, line.Competency));
        var columns = library.Current.Content.Competencies
            .Select(competency => new CompetencyColumn(competency.Id, competency.Title))
            .Concat(counting.Values.Select(line => new CompetencyColumn(line.Competency, line.CompetencyTitle)))
            .DistinctBy(column => column.Competency).ToList();
        var rows = people.Select(person => (person, shop: shops[person.ShopId!.Value]))
            .OrderBy(row => row.shop.Name, StringComparer.Ordinal).ThenBy(row => row.person.DisplayName, StringComparer.Ordinal)
            .Select(row => new CompetencyRow(
                row.person.Id, row.person.DisplayName, People.View(row.shop), on ?? lines.Today(row.shop),
                [.. columns.Select(column => counting.GetValueOrDefault((row.person.Id, column.Competency)))]));
        return new CompetencyTable(columns, [.. rows]);
    }

    private async Task<CompetencyPath> Path(PersonId person, Competency competency, Past past)
    {
        var record = past.Records.Find(line => line.Competency == competency.Id && line.IsNewest);
        // While renewal is not open there is nothing to do; from then on the way is gone again.
        var isSettled = record?.Standing?.State is RecordState.Current or RecordState.Suspended;
        var awaited = past.Awaiting.Find(of => of.Paper.Competency == competency.Id);
        var steps = new List<PathStep>();
        foreach (var module in competency.Modules.Select(id => library.Current.Content.FindModule(id)!))
            steps.Add(new PathStep.Read(module.Id, module.Title, module.Minutes, isSettled || past.Read.Contains(module.Id)));
        foreach (var (kind, scenario) in competency.Paper.Questions
            .SelectMany(draw => draw.From.Select(scenario => (draw.Kind, scenario))).Distinct())
        {
            var tried = past.Tried.Find(attempt => attempt.Scenario == scenario && attempt.Kind == kind);
            steps.Add(new PathStep.Practise(
                scenario, library.Current.Content.FindScenario(scenario)!.Title, kind, tried?.Count ?? 0, isSettled || tried is { Accepted: true }));
        }

        var papers = past.Papers.Where(paper => paper.Competency == competency.Id).ToList();
        var last = papers.Find(paper => paper.State is PaperState.Admitted or PaperState.Open) ?? papers.MaxBy(paper => paper.AdmittedAt);
        var notBefore = awaited is null && !isSettled
            ? await closing.NotBefore(person, competency.Id, competency.Paper.WaitAfterFailed, past.Shop)
            : null;
        steps.Add(new PathStep.SitPaper(
            last?.Id, last?.State, notBefore > clock.Instant() ? notBefore : null, isSettled || awaited is not null));
        foreach (var procedure in (awaited?.Competency ?? competency).Observed?.Procedures ?? [])
        {
            var run = past.Runs.Where(known => known.Procedure == procedure && known.PaperId == (awaited?.Paper.Id ?? last?.Id))
                .MaxBy(known => known.StartedAt);
            steps.Add(new PathStep.BeObserved(
                procedure,
                library.Current.Content.FindProcedure(procedure)?.Procedure.Title ?? procedure.Value,
                run?.Id,
                awaited?.Until,
                isSettled || (awaited is not null && !awaited.Procedures.Contains(procedure))));
        }

        // Whoever has passed the paper, or has one to sit now, is not sent back to the lesson.
        var next = steps.Find(step => !step.IsDone &&
            (step is PathStep.SitPaper or PathStep.BeObserved || (awaited is null && last?.State is not (PaperState.Admitted or PaperState.Open))));
        return new(competency.Id, competency.Title, isSettled ? null : next, steps, record);
    }

    /// <summary>What a technician has done so far.</summary>
    private sealed record Past(
        Shop Shop,
        HashSet<Content.Modules.ModuleId> Read,
        List<Tried> Tried,
        List<Paper> Papers,
        List<AwaitedRuns> Awaiting,
        List<Run> Runs,
        List<RecordLine> Records);

    private sealed record Tried(Content.Scenarios.ScenarioId Scenario, Content.Scenarios.QuestionKind Kind, int Count, bool Accepted);
}

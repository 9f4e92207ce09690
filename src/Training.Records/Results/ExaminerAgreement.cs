using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>What an examiner's taps say of one thing.</summary>
public enum Judgement
{
    /// <summary>It was done rightly.</summary>
    Right,

    /// <summary>It was got wrong.</summary>
    Wrong,

    /// <summary>There was no chance to get it wrong, as a step of it was not seen.</summary>
    NotThere,
}

/// <summary>How far two examiners agree who observed the same runs: each rule, each step that can be left out and each decoy is one judgement.</summary>
public sealed class ExaminerAgreement
{
    /// <summary>Below this many judgements the interval is wider than any conclusion. Common practice, no published source.</summary>
    public const int EnoughJudgements = 30;

    private readonly TrainingDbContext db;
    private readonly ExaminerPairs pairs;

    internal ExaminerAgreement(TrainingDbContext db, ExaminerPairs pairs) => (this.db, this.pairs) = (db, pairs);

    /// <summary>
    /// The agreement over all signed runs that a second examiner observed to the end, and what they disagree about most
    /// often; nothing where fewer than five technicians were observed so. For staff of the provider.
    /// </summary>
    /// <param name="actor">Who asks (trainers, examiners, administrators).</param>
    public async Task<Outcome<AgreementView, Refusal>> Look(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.Is(Roles.Trainer) && !actor.Is(Roles.Examiner) && !actor.Is(Roles.Administrator)) return Refused.NotAllowed;
        if (actor.Shop is not null) return Refused.NotFound;
        var ended = pairs.Ended().Select(beside => beside.RunId).Distinct();
        var runs = await ended.CountAsync();
        var technicians = await db.Runs.Where(run => ended.Contains(run.Id)).Select(run => run.TechnicianId).Distinct().Take(SmallGroups.Fewest).CountAsync();
        if (technicians < SmallGroups.Fewest) return new AgreementView(runs, null, []);
        var judged = await db.JudgedPairs.AsNoTracking().ToListAsync();
        var disputed = judged.Where(pair => pair.First != pair.Second).GroupBy(pair => (pair.Procedure, pair.What))
            .Select(of => new Disputed(of.Key.Procedure, of.Key.What, of.Sum(pair => pair.Times)))
            .OrderByDescending(of => of.Times).ThenBy(of => of.What.Subject, StringComparer.Ordinal).ToList();
        return new AgreementView(runs, Agreement.Of(judged.Select(pair => (pair.First, pair.Second, (long)pair.Times))), disputed);
    }
}

/// <summary>How far examiners agree.</summary>
/// <param name="Runs">How many runs were observed by two.</param>
/// <param name="Agreement">The agreement; null where too few technicians were observed so.</param>
/// <param name="Disputed">What they judge differently, the most often first.</param>
public sealed record AgreementView(int Runs, Agreement? Agreement, IReadOnlyList<Disputed> Disputed);

/// <summary>Something that two examiners judged differently.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="What">The rule, step or decoy.</param>
/// <param name="Times">How often.</param>
public sealed record Disputed(ProcedureId Procedure, Chance What, int Times);

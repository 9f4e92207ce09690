using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Observing;
using Training.Records.Publishing;
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
    private readonly Archive archive;
    private readonly Graders graders;
    private readonly RunJudging judging;

    internal ExaminerAgreement(TrainingDbContext db, Archive archive, Graders graders, RunJudging judging) =>
        (this.db, this.archive, this.graders, this.judging) = (db, archive, graders, judging);

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
        var besides = await db.BesideRuns.AsNoTracking().Include(beside => beside.Taps).Where(beside => beside.EndedAt != null).ToListAsync();
        var ids = besides.Select(beside => beside.RunId).ToList();
        var runs = await db.Runs.AsNoTracking().Include(run => run.Taps).Where(run => ids.Contains(run.Id) && run.SignedAt != null)
            .ToDictionaryAsync(run => run.Id);
        var technicians = runs.Values.Select(run => run.TechnicianId).Distinct().Count();
        if (technicians < SmallGroups.Fewest) return new AgreementView(runs.Count, null, []);
        var pairs = new List<(ProcedureId Procedure, Chance What, Judgement First, Judgement Second)>();
        foreach (var beside in besides.Where(beside => runs.ContainsKey(beside.RunId)))
        {
            var run = runs[beside.RunId];
            var (first, second) = (await Judgements(run, run.LiveTaps), await Judgements(run, beside.LiveTaps));
            pairs.AddRange(first.Keys.Union(second.Keys).Select(what =>
                (run.Procedure, what, first.GetValueOrDefault(what, Judgement.NotThere), second.GetValueOrDefault(what, Judgement.NotThere))));
        }

        var disputed = pairs.Where(pair => pair.First != pair.Second).CountBy(pair => (pair.Procedure, pair.What))
            .OrderByDescending(of => of.Value).ThenBy(of => of.Key.What.Subject, StringComparer.Ordinal)
            .Select(of => new Disputed(of.Key.Procedure, of.Key.What, of.Value)).ToList();
        return new AgreementView(runs.Count, Agreement.Of([.. pairs.Select(pair => (pair.First, pair.Second))]), disputed);
    }

    private async Task<Dictionary<Chance, Judgement>> Judgements(Run run, IEnumerable<ITap> taps)
    {
        var judged = await judging.Judge(run, taps, ContentLibrary.DefaultLanguage);
        var offered = Tapping.Offered(await archive.Procedure(run.ProcedureHash), run.Variant).Select(offer => offer.Id);
        var chances = (await graders.For(run.ProcedureHash, run.Variant)).Chances(judged.Answer, offered).Value;
        var broken = judged.Verdict.Findings.Select(Chance.Of).ToHashSet();
        return chances.Where(chance => chance.Kind is ChanceKind.Rule or ChanceKind.LeftOut or ChanceKind.Decoy)
            .ToDictionary(chance => chance, chance => broken.Contains(chance) ? Judgement.Wrong : Judgement.Right);
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

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Training.Content;
using Training.Records.Observing;
using Training.Records.Publishing;
using Training.Records.Storage;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>
/// How often two examiners who watched the same runs judged a thing like this: counted in the change with which a run is
/// both signed and observed to its end by a second examiner. Nothing of it changes afterwards, and it names nobody.
/// </summary>
internal sealed class JudgedPair
{
    public required ProcedureId Procedure { get; init; }

    public required ChanceKind Kind { get; init; }

    public required string Subject { get; init; }

    /// <summary>What the taps of the run's own examiner say of it.</summary>
    public required Judgement First { get; init; }

    /// <summary>What the taps of the one beside say of it.</summary>
    public required Judgement Second { get; init; }

    public int Times { get; set; }

    public Chance What => new(Kind, Subject);
}

/// <summary>The pairs in memory, and how those of a run are added to them.</summary>
internal sealed class PairSheet
{
    public Dictionary<(ProcedureId, Chance, Judgement, Judgement), JudgedPair> Pairs { get; } = [];

    /// <summary>Called with everything that is new on the sheet.</summary>
    public Action<object> Added { get; init; } = _ => { };

    public void Add(ProcedureId procedure, IEnumerable<(Chance What, Judgement First, Judgement Second)> judged)
    {
        foreach (var (what, first, second) in judged)
        {
            if (!Pairs.TryGetValue((procedure, what, first, second), out var pair))
            {
                pair = new() { Procedure = procedure, Kind = what.Kind, Subject = what.Subject, First = first, Second = second };
                Pairs.Add((procedure, what, first, second), pair);
                Added(pair);
            }

            pair.Times++;
        }
    }
}

/// <summary>Judges and counts what two examiners saw of one run.</summary>
internal sealed class ExaminerPairs(TrainingDbContext db, Archive archive, Graders graders, RunJudging judging)
{
    /// <summary>Observations beside runs that are over: the run is signed, and the second examiner has ended.</summary>
    public IQueryable<BesideRun> Ended() => db.BesideRuns.AsNoTracking()
        .Where(beside => beside.EndedAt != null && db.Runs.Any(run => run.Id == beside.RunId && run.SignedAt != null));

    /// <summary>Counts what the two saw, within the change that makes the observation over.</summary>
    public async Task Count(Run run, BesideRun beside)
    {
        var sheet = new PairSheet { Added = made => db.Add(made) };
        // Two can be counted in one change: what the first one added is not in the database yet.
        await db.JudgedPairs.Where(pair => pair.Procedure == run.Procedure).LoadAsync();
        foreach (var pair in db.JudgedPairs.Local.Where(pair => pair.Procedure == run.Procedure))
            sheet.Pairs.Add((pair.Procedure, pair.What, pair.First, pair.Second), pair);
        sheet.Add(run.Procedure, await Of(run, beside));
    }

    /// <summary>What the two saw: each rule, each step that can be left out and each decoy is one judgement.</summary>
    public async Task<IReadOnlyList<(Chance What, Judgement First, Judgement Second)>> Of(Run run, BesideRun beside)
    {
        var (first, second) = (await Judgements(run, run.LiveTaps), await Judgements(run, beside.LiveTaps));
        return [.. first.Keys.Union(second.Keys).Select(what =>
            (what, first.GetValueOrDefault(what, Judgement.NotThere), second.GetValueOrDefault(what, Judgement.NotThere)))];
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

internal sealed class JudgedPairTable : IEntityTypeConfiguration<JudgedPair>
{
    private const int LongestId = 100;

    public void Configure(EntityTypeBuilder<JudgedPair> builder)
    {
        builder.ToTable("JudgedPairs");
        builder.HasKey(pair => new { pair.Procedure, pair.Kind, pair.Subject, pair.First, pair.Second });
        builder.Property(pair => pair.Subject).HasMaxLength(LongestId);
        builder.Ignore(pair => pair.What);
    }
}

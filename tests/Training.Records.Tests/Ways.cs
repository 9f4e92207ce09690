using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Sequencing.Procedures;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests;

/// <summary>Ways through the services that many tests go.</summary>
internal static class Ways
{
    public const string RightOrder =
        """[{"step":"key-off"},{"step":"rest","seconds":60},{"step":"lift-tray"},{"step":"hook"},{"step":"stow-boom"}]""";

    /// <summary>The hand before the wait: unsafe.</summary>
    public const string UnsafeOrder =
        """[{"step":"key-off"},{"step":"lift-tray"},{"step":"rest","seconds":60},{"step":"hook"},{"step":"stow-boom"}]""";

    /// <summary>The right answer to a question of the test content, made of what is offered.</summary>
    public static string RightAnswer(QuestionView question)
    {
        string[] order = ["key-off", "rest", "lift-tray", "bench", "stow-boom"];
        var offered = question.Offered.Select(step => step.Id.Value).ToHashSet();
        return "[" + string.Join(',', order.Where(offered.Contains)
            .Select(step => step == "rest" ? """{"step":"rest","seconds":60}""" : $$"""{"step":"{{step}}"}""")) + "]";
    }

    public static async Task<SittingId> OpenSitting(this TestWorld world, CompetencyId? competency = null, Actor? examiner = null) =>
        Ok(await world.Sittings(sittings => sittings.Open(examiner ?? world.Examiner, competency ?? RelayTrays, "Hall 2")));

    public static async Task<PaperId> Admit(this TestWorld world, SittingId sitting, Actor technician, Actor? examiner = null) =>
        Ok(await world.Sittings(sittings => sittings.Admit(examiner ?? world.Examiner, sitting, technician.Person)));

    public static async Task<OpenPaper> Begin(this TestWorld world, Actor technician, PaperId paper) =>
        Ok(await world.Papers(papers => papers.Begin(technician, paper)));

    /// <summary>A paper that was just begun, in a sitting that is open.</summary>
    public static async Task<OpenPaper> BegunPaper(this TestWorld world, Actor technician, CompetencyId? competency = null) =>
        await world.Begin(technician, await world.Admit(await world.OpenSitting(competency), technician));

    /// <summary>A paper that was answered rightly and handed in, its sitting closed.</summary>
    public static async Task<PaperId> PassedPaper(this TestWorld world, Actor technician, CompetencyId? competency = null)
    {
        var sitting = await world.OpenSitting(competency);
        var open = await world.Begin(technician, await world.Admit(sitting, technician));
        foreach (var question in open.Questions)
            Ok(await world.Papers(papers => papers.Save(technician, open.Id, question.Number, RightAnswer(question.Question), 1)));
        var result = Ok(await world.Papers(papers => papers.HandIn(technician, open.Id)));
        Assert.True(result.Passed);
        Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, sitting)));
        return open.Id;
    }

    /// <summary>A paper that was handed in without an answer.</summary>
    public static async Task<PaperId> FailedPaper(this TestWorld world, Actor technician)
    {
        var sitting = await world.OpenSitting();
        var open = await world.Begin(technician, await world.Admit(sitting, technician));
        Assert.False(Ok(await world.Papers(papers => papers.HandIn(technician, open.Id))).Passed);
        Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, sitting)));
        return open.Id;
    }

    public static NewRun Run(Actor technician, ProcedureId procedure) => new(
        technician.Person, RelayTrays, procedure, procedure == ChangeTray ? Crane : null, "L18-0042");

    public static async Task<RunId> StartRun(this TestWorld world, Actor technician, ProcedureId procedure, Actor? examiner = null) =>
        Ok(await world.Runs(runs => runs.Start(examiner ?? world.Examiner, Run(technician, procedure))));

    /// <summary>Taps a step some seconds after the last; the clock goes on with it.</summary>
    public static async Task<TapView> Tap(this TestWorld world, RunId run, string step, decimal at, Actor? examiner = null)
    {
        var view = Ok(await world.Runs(runs => runs.Look(examiner ?? world.Examiner, run)));
        if (at > view.ElapsedSeconds) world.Clock.Advance(TimeSpan.FromSeconds((double)(at - view.ElapsedSeconds)));
        return Ok(await world.Runs(runs => runs.Tap(examiner ?? world.Examiner, run, new(Guid.NewGuid(), new(step), at))));
    }

    /// <summary>A run that was ended, its steps done rightly or the row of steps given.</summary>
    public static async Task<RunId> EndedRun(
        this TestWorld world, Actor technician, ProcedureId procedure, Actor? examiner = null, params (string Step, decimal At)[] taps)
    {
        var run = await world.StartRun(technician, procedure, examiner);
        if (taps.Length == 0)
            taps = procedure == StowTray
                ? [("wipe", 20), ("box", 40), ("label", 60)]
                : [("key-off", 10), ("rest", 75), ("lift-tray", 90), ("hook", 110), ("stow-boom", 140)];
        foreach (var (step, at) in taps) await world.Tap(run, step, at, examiner);
        Ok(await world.Runs(runs => runs.End(examiner ?? world.Examiner, run)));
        return run;
    }

    public static async Task<SignedRun> SignedRun(this TestWorld world, Actor technician, ProcedureId procedure)
    {
        var run = await world.EndedRun(technician, procedure);
        return Ok(await world.Runs(runs => runs.Sign(world.Examiner, run, "Seen.")));
    }

    /// <summary>A record that was earned the whole way.</summary>
    public static async Task<RecordId> EarnedRecord(this TestWorld world, Actor technician)
    {
        await world.PassedPaper(technician);
        Assert.Null((await world.SignedRun(technician, ChangeTray)).Record);
        return (await world.SignedRun(technician, StowTray)).Record!.Value;
    }

    public static async Task<RecordView> Look(this TestWorld world, RecordId record, Actor? actor = null) =>
        Ok(await world.Records(records => records.Look(actor ?? world.Administrator, record)));
}

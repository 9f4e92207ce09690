using Training.Records.Publishing;

namespace Training.Records.Observing;

/// <summary>Judges a run by the taps that stand, as often as wanted: the same taps have the same verdict.</summary>
internal sealed class RunJudging(Archive archive, Graders graders)
{
    public Task<JudgedRunView> Judge(Run run, string language) => Judge(run, run.LiveTaps, language);

    /// <summary>Judges a run by the taps of whoever observed it.</summary>
    public async Task<JudgedRunView> Judge(Run run, IEnumerable<ITap> liveTaps, string language)
    {
        var written = (await archive.Of(run.PublicationNumber)).Content.FindProcedure(run.Procedure)!;
        var answer = RunAnswer.Of(written.Procedure, liveTaps);
        return new(answer, (await graders.For(run.ProcedureHash, run.Variant)).Grade(answer).Value, written.In(language));
    }
}

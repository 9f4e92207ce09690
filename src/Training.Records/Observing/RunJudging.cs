using Training.Records.Publishing;

namespace Training.Records.Observing;

/// <summary>Judges a run by the taps that stand, as often as wanted: the same taps have the same verdict.</summary>
internal sealed class RunJudging(Archive archive, Graders graders)
{
    public async Task<JudgedRunView> Judge(Run run, string language)
    {
        var written = (await archive.Of(run.PublicationNumber)).Content.FindProcedure(run.Procedure)!;
        var answer = RunAnswer.Of(written.Procedure, run.LiveTaps);
        return new(answer, (await graders.For(run.ProcedureHash, run.Variant)).Grade(answer).Value, written.In(language));
    }
}

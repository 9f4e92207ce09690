using Training.Content.Procedures;
using Training.Records.Publishing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Demo;

/// <summary>Right answers and runs, worked out by the engine itself: the listing, mended where a wait is wanted.</summary>
internal sealed class RightWork(Graders graders)
{
    /// <summary>A right answer with its verdict, which says when each step begins and ends.</summary>
    public async Task<(IReadOnlyList<Entry> Entries, Verdict Verdict)> Of(
        WrittenProcedure written, VariantId? variant, IReadOnlyList<Entry> start)
    {
        var grader = await graders.For(written.File.Hash, variant);
        var done = start.Select(entry => entry.Step).ToHashSet();
        var choices = written.Procedure.Steps.Where(step => done.Contains(step.Id) && step.Choice is not null)
            .Select(step => step.Choice!.Value).ToHashSet();
        List<Entry> entries = [.. written.Procedure.StepsFor(variant)
            .Where(step => !step.IsOptional && !done.Contains(step.Id) && (step.Choice is not { } choice || choices.Add(choice)))
            .Select(step => new Entry(step.Id))];
        var verdict = grader.Grade(new Answer(entries) { Start = start }).Value;
        if (verdict.Accepted) return (entries, verdict);
        return (verdict.Nearest, grader.Grade(new Answer(verdict.Nearest) { Start = start }).Value);
    }
}

using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Records.Observing;

/// <summary>
/// Makes an answer with real times of a run's taps. A tap is made as the step is done, so it is when the step was
/// finished. A wait was begun at the tap before it; anything else at the later of the tap before it and (the tap − what
/// the procedure says that it takes). Before the first tap stands the start of the run.
/// </summary>
internal static class RunAnswer
{
    public static Answer Of(Procedure procedure, IEnumerable<ITap> liveTaps)
    {
        var steps = procedure.Steps.ToDictionary(step => step.Id);
        var entries = new List<Entry>();
        var before = 0m;
        foreach (var tap in liveTaps)
        {
            var began = !steps.TryGetValue(tap.Step, out var step) ? tap.Seconds
                : step.IsWait ? before
                : Math.Max(before, tap.Seconds - step.Takes.Seconds);
            if (!Times.TryCreate(Duration.FromSeconds(began), Duration.FromSeconds(tap.Seconds), out var times))
                throw new InvalidOperationException($"Tap {tap.Number} stands before the tap before it.");
            entries.Add(new(tap.Step) { Observed = times });
            before = tap.Seconds;
        }

        return new(entries);
    }
}

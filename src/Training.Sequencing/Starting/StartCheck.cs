using Training.Sequencing.Answers;
using Training.Sequencing.Findings;
using Training.Sequencing.Layouts;
using Training.Sequencing.Replaying;

namespace Training.Sequencing.Starting;

/// <summary>
/// The laws of a start: nothing that is never right, nothing twice, one member of a one-of group, and every rule holds
/// within it. What must come before its steps is looked at by <see cref="StartedPlan"/>.
/// </summary>
internal static class StartCheck
{
    /// <summary>Why a start is impossible, or nothing.</summary>
    public static Refusal? Fault(Layout layout, Reading reading)
    {
        var places = new int[layout.StepCount];
        Array.Fill(places, Attempt.Nowhere);
        return EntryFault(layout, reading.Start, places) ?? RuleFault(layout, reading, places);
    }

    private static Refusal? EntryFault(Layout layout, int[] start, int[] places)
    {
        for (var e = 0; e < start.Length; e++)
        {
            var step = start[e];
            if (step >= layout.StepCount) return At(e, $"“{layout.Named(step)}” is not right in this job.");
            if (places[step] != Attempt.Nowhere) return At(e, $"“{layout.Named(step)}” stands there twice.");
            for (var before = 0; before < e; before++)
                if (layout.AreAlternatives(start[before], step))
                    return At(e, $"“{layout.Named(step)}” and “{layout.Named(start[before])}” exclude each other.");
            places[step] = e;
        }

        return null;
    }

    private static Refusal? RuleFault(Layout layout, Reading reading, int[] places)
    {
        foreach (var link in layout.Links)
        {
            if (places[link.First] == Attempt.Nowhere || places[link.Then] == Attempt.Nowhere) continue;
            if (places[link.First] > places[link.Then])
                return At(places[link.Then], $"rule “{link.Rule.Id}” asks for “{layout.Named(link.First)}” first.");
        }

        var replay = Replay.Of(layout, reading);
        foreach (var gap in layout.Gaps)
        {
            if (places[gap.First] == Attempt.Nowhere || places[gap.Then] == Attempt.Nowhere) continue;
            var (first, then) = (places[gap.First] - replay.StartCount, places[gap.Then] - replay.StartCount);
            if (replay.StartsAt(then) - replay.EndsAt(first) < gap.AtLeast!.Value)
                return At(places[gap.Then], $"rule “{gap.Rule.Id}” asks for {gap.Rule.AtLeast} before it.");
        }

        for (var e = 0; e < reading.Start.Length; e++)
            foreach (var need in layout.NeedsOf[reading.Start[e]])
                if (!WrongState.Holds(need, replay.ValuesBefore(e - replay.StartCount)))
                    return At(e, $"rule “{need.Rule.Id}” forbids “{layout.Named(need.Step)}” there.");
        return null;
    }

    private static Refusal At(int entry, Sentence sentence) => new($"Place {entry + 1} of the start: {sentence}");
}

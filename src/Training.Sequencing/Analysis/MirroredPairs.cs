using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Analysis;

/// <summary>
/// The law of a procedure that undoes another: what was done first is undone last. Of the pairs of steps that both sides
/// know, those are looked at from which the others follow.
/// </summary>
internal sealed class MirroredPairs
{
    private readonly (int Theirs, int Mine)[] pairs;
    private readonly ForcedPairs theirs;
    private readonly ForcedPairs mine;

    private MirroredPairs(Mirror mirror, Grader mine, Grader theirs)
    {
        (this.mine, this.theirs) = (new(mine.Layout, mine.Plans), new(theirs.Layout, theirs.Plans));
        pairs = [.. mirror.Pairs
            .Select(pair => (Theirs: NumberOf(theirs.Layout, pair.Theirs), Mine: NumberOf(mine.Layout, pair.Mine)))
            .Where(pair => pair.Theirs >= 0 && pair.Mine >= 0)];
    }

    /// <summary>Every pair of the other procedure that has no reversed pair here.</summary>
    public static IEnumerable<AuthoringRemark> Remarks(Grader mine, Grader theirs)
    {
        var mirror = mine.Procedure.Mirror!;
        var mirrored = new MirroredPairs(mirror, mine, theirs);
        return mirrored.Missing().Select(missing => new AuthoringRemark(
            RemarkCodes.NotMirrored,
            $"In “{mirror.Of}” the step “{theirs.Layout.IdOf(missing.First.Theirs)}” comes before "
            + $"“{theirs.Layout.IdOf(missing.Then.Theirs)}”, but here nothing puts "
            + $"“{mine.Layout.IdOf(missing.Then.Mine)}” before “{mine.Layout.IdOf(missing.First.Mine)}”. "
            + "If the way back is bound in the same way, add a first/then rule.",
            ProblemSubject.Mirror));
    }

    private IEnumerable<((int Theirs, int Mine) First, (int Theirs, int Mine) Then)> Missing() =>
        from first in pairs
        from then in pairs
        where theirs.Has(first.Theirs, then.Theirs) && !pairs.Any(between =>
            theirs.Has(first.Theirs, between.Theirs) && theirs.Has(between.Theirs, then.Theirs))
        where first.Mine != then.Mine && !mine.Layout.AreAlternatives(first.Mine, then.Mine)
            && !mine.Has(then.Mine, first.Mine)
        select (first, then);

    private static int NumberOf(Layout layout, StepId id) =>
        layout.TryNumber(id, out var number) && number < layout.StepCount ? number : -1;

    /// <summary>Which step comes before which whenever both are done.</summary>
    private sealed class ForcedPairs(Layout layout, PlanShelf plans)
    {
        public Layout Layout => layout;

        public bool Has(int first, int then)
        {
            if (first == then || layout.AreAlternatives(first, then)) return false;
            var choice = StepChoice.Of(layout, [], [first, then]);
            return plans.For(choice.Steps).After[first, then];
        }
    }
}

using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Analysis;

/// <summary>A wrong order that shows what a procedure guards against.</summary>
/// <param name="Answer">The order.</param>
/// <param name="Verdict">What the engine says of it.</param>
/// <param name="Rule">The rule whose two steps were swapped; null where the order is one that people gave.</param>
public sealed record LikelyWrong(Answer Answer, Verdict Verdict, RuleId? Rule)
{
    /// <summary>
    /// The right order that the engine gives, with the two steps of the gravest rule swapped, as far as that breaks it; null
    /// where no swap breaks any rule.
    /// </summary>
    /// <param name="grader">The procedure on one kind of vehicle.</param>
    public static LikelyWrong? Of(Grader grader)
    {
        ArgumentNullException.ThrowIfNull(grader);
        if (Right(grader) is not { Count: > 0 } right) return null;
        var rules = grader.Procedure.Rules.OrderByDescending(rule => rule.Stakes.Severity).ThenByDescending(rule => rule.Stakes.Harm);
        foreach (var rule in rules)
            foreach (var (one, other) in Pairs(grader.Procedure, rule, right))
            {
                var answer = new Answer(Swapped(right, one, other));
                var graded = grader.Grade(answer);
                if (graded.IsOk && graded.Value.Findings.Any(finding => finding.Subject == rule.Id.Value)) return new(answer, graded.Value, rule.Id);
            }

        return null;
    }

    /// <summary>An order that people gave, judged by the procedure; null where it is right, or names what the procedure does not have.</summary>
    /// <param name="grader">The procedure on one kind of vehicle.</param>
    /// <param name="given">The order.</param>
    public static LikelyWrong? OfGiven(Grader grader, Answer given)
    {
        ArgumentNullException.ThrowIfNull(grader);
        var graded = grader.Grade(given);
        return graded is { IsOk: true, Value.Accepted: false } ? new(given, graded.Value, null) : null;
    }

    /// <summary>A right order with the least waits, the nearest to no order at all.</summary>
    /// <param name="grader">The procedure on one kind of vehicle.</param>
    public static IReadOnlyList<Entry> Right(Grader grader)
    {
        ArgumentNullException.ThrowIfNull(grader);
        var graded = grader.Grade(new Answer([]));
        return graded.IsOk ? graded.Value.Nearest : [];
    }

    private static IEnumerable<(int One, int Other)> Pairs(Procedure procedure, Rule rule, IReadOnlyList<Entry> right) => rule switch
    {
        OrderRule order =>
            from first in order.First
            from then in order.Then
            let pair = (One: PlaceOf(right, first), Other: PlaceOf(right, then))
            where pair.One >= 0 && pair.Other >= 0
            select pair,
        StateRule state => Turns(procedure, state, right),
        _ => [],
    };

    // What needs a state is swapped with what brings the state about, or with what ends it.
    private static IEnumerable<(int One, int Other)> Turns(Procedure procedure, StateRule rule, IReadOnlyList<Entry> right)
    {
        var at = PlaceOf(right, rule.Step);
        if (at < 0) return [];
        var facts = rule.OnlyWhile.Select(setting => setting.Fact).ToHashSet();
        return from place in Enumerable.Range(0, right.Count)
               where place != at && procedure.Steps.Any(step => step.Id == right[place].Step && step.Sets.Any(set => facts.Contains(set.Fact)))
               orderby Math.Abs(place - at)
               select (place, at);
    }

    private static int PlaceOf(IReadOnlyList<Entry> order, StepId step)
    {
        for (var place = 0; place < order.Count; place++)
            if (order[place].Step == step) return place;
        return -1;
    }

    private static Entry[] Swapped(IReadOnlyList<Entry> right, int one, int other)
    {
        Entry[] swapped = [.. right];
        (swapped[one], swapped[other]) = (swapped[other], swapped[one]);
        return swapped;
    }
}

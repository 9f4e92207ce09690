using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>
/// What an answer had the chance to get wrong, law by law:
/// <list type="bullet">
/// <item>an order rule where both steps of one of its pairs are there and the earlier one stands in the answer itself;
/// a rule that asks for a time also where the earlier one was done before and the later one stands in the answer;</item>
/// <item>a state rule where the step that it guards stands in the answer;</item>
/// <item>leaving out: every step of the step set that nobody had done before, a one-of group once;</item>
/// <item>a decoy, or a step of another kind of vehicle, that was offered;</item>
/// <item>doing again: every step that stands in the answer;</item>
/// <item>a second way: the other members of a group of which one was done.</item>
/// </list>
/// For a step that comes too late there is no such count: it is found and has no denominator.
/// </summary>
internal static class Chances
{
    public static HashSet<Chance> Of(Attempt attempt, IEnumerable<StepId> offered)
    {
        var chances = new HashSet<Chance>();
        Rules(attempt, chances);
        LeftOut(attempt, chances);
        foreach (var place in attempt.Reading.Entries.Index())
            chances.Add(new(place.Item < attempt.Layout.StepCount ? ChanceKind.Again : ChanceKind.Decoy, attempt.Layout.IdOf(place.Item).Value));
        foreach (var id in offered)
            if (attempt.Layout.TryNumber(id, out var number) && number >= attempt.Layout.StepCount) chances.Add(new(ChanceKind.Decoy, id.Value));
        SecondWays(attempt, chances);
        return chances;
    }

    private static void Rules(Attempt attempt, HashSet<Chance> chances)
    {
        foreach (var link in attempt.Layout.Links)
        {
            var (first, then) = (attempt.FirstPlaceOf(link.First), attempt.FirstPlaceOf(link.Then));
            if (first == Attempt.Nowhere || then == Attempt.Nowhere || link.First == link.Then) continue;
            if (attempt.Layout.AreAlternatives(link.First, link.Then)) continue;
            if (first >= 0 || (link.AtLeast is not null && then >= 0)) chances.Add(new(ChanceKind.Rule, link.Rule.Id.Value));
        }

        foreach (var need in attempt.Layout.Needs)
            if (attempt.Reading.Entries.Contains(need.Step)) chances.Add(new(ChanceKind.Rule, need.Rule.Id.Value));
    }

    private static void LeftOut(Attempt attempt, HashSet<Chance> chances)
    {
        var layout = attempt.Layout;
        for (var step = 0; step < layout.StepCount; step++)
        {
            if (!attempt.Plan.Steps.Has(step) || attempt.WasDone(step)) continue;
            var group = layout.GroupOf[step];
            if (group >= 0) chances.Add(new(ChanceKind.LeftOut, layout.IdOf(layout.Groups[group].Members[0]).Value));
            else if (layout.IsRequired(step)) chances.Add(new(ChanceKind.LeftOut, layout.IdOf(step).Value));
        }
    }

    private static void SecondWays(Attempt attempt, HashSet<Chance> chances)
    {
        foreach (var (group, member) in attempt.Choice.MemberOf.Index())
        {
            if (attempt.FirstPlaceOf(member) == Attempt.Nowhere) continue;
            foreach (var other in attempt.Layout.Groups[group].Members)
                if (other != member) chances.Add(new(ChanceKind.SecondWay, attempt.Layout.IdOf(other).Value));
        }
    }
}

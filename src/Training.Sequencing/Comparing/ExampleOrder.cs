using Training.Sequencing.Analysis.Counting;
using Training.Sequencing.Answers;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Comparing;

/// <summary>
/// An order that one revision accepts and the other does not. There is one just where some poset of the one leaves, for
/// every poset of the other, a pair of it open or asks for the reverse: turning such pairs round, without a circle, makes it.
/// </summary>
internal static class ExampleOrder
{
    /// <summary>Finds one that breaks the gravest rule that can be broken so; nothing where there is none.</summary>
    public static ChangedOrder? Find(StepId[] steps, OrderUnion right, Grader rightBy, OrderUnion wrong, Grader wrongBy)
    {
        foreach (var part in right.Parts)
        {
            if (Turn(part.Poset, wrong.Parts, 0, pair => Gravity(steps, pair, wrongBy.Layout)) is not { } turned) continue;
            StepId[] order = [.. InListing(turned).Select(place => steps[place])];
            var asWrong = Wrong(order, wrong.Parts[0].Plan, wrongBy.Layout);
            var why = wrongBy.Grade(new(asWrong)).Value.Findings
                .Where(finding => finding.Kind is FindingKind.Order or FindingKind.State)
                .OrderByDescending(finding => finding.Steps.All(order.Contains))
                .ThenByDescending(finding => !finding.Stakes.IsSafe)
                .ThenByDescending(finding => finding.Stakes.Severity)
                .First();
            return new(order, Right(order, part.Plan, rightBy), asWrong, why);
        }

        return null;
    }

    private static Poset? Turn(Poset poset, IReadOnlyList<PlannedOrder> others, int at, Func<(int First, int Then), int> gravity)
    {
        if (at == others.Count) return poset;
        var turnable = OrderUnion.Pairs(others[at].Poset).Where(pair => !poset.After[pair.First, pair.Then]);
        foreach (var (first, then) in turnable.OrderByDescending(gravity))
            if (OrderUnion.With(poset, [(then, first)]) is { } turned && Turn(turned, others, at + 1, gravity) is { } found)
                return found;
        return null;
    }

    // A pair that a rule names itself shows more than one that merely follows.
    private static int Gravity(StepId[] steps, (int First, int Then) pair, Layout layout)
    {
        var links = layout.Links.Where(link =>
            layout.IdOf(link.First) == steps[pair.First] && layout.IdOf(link.Then) == steps[pair.Then]).ToArray();
        return links.Length == 0 ? 0 : links.Max(link => 1 + (int)link.Rule.Stakes.Severity + (link.Rule.Stakes.IsSafe ? 0 : 10));
    }

    /// <summary>The first of the orders of a poset by the numbers of its things.</summary>
    private static List<int> InListing(Poset poset)
    {
        var order = new List<int>(poset.Size);
        var left = Enumerable.Range(0, poset.Size).ToList();
        while (left.Count > 0)
        {
            var next = left.First(one => !left.Exists(other => poset.After[other, one]));
            order.Add(next);
            left.Remove(next);
        }

        return order;
    }

    private static IReadOnlyList<Entry> Right(StepId[] order, Plan plan, Grader grader)
    {
        var layout = grader.Layout;
        int[] steps = [.. Enumerable.Range(0, layout.StepCount).Where(plan.Steps.Has)];
        int[] places = [.. order.Select(id => Array.FindIndex(steps, step => layout.IdOf(step) == id))];
        var whole = OrderUnion.With(Poset.Of(plan, steps), places.Zip(places.Skip(1)))
            ?? throw new InvalidOperationException("An order that a plan allows could not be made whole.");
        return grader.Grade(new([.. InListing(whole).Select(place => new Entry(layout.IdOf(steps[place])))])).Value.Nearest;
    }

    // What the order lacks is put in behind all that must come before it, so that no fault of it hides the one that is looked for.
    private static IReadOnlyList<Entry> Wrong(StepId[] order, Plan plan, Layout layout)
    {
        List<int> entries = [.. order.Select(id => layout.TryNumber(id, out var number) ? number : throw new InvalidOperationException($"There is no step {id}."))];
        foreach (var step in Enumerable.Range(0, layout.StepCount).Where(step => plan.Steps.Has(step) && !entries.Contains(step)))
            entries.Insert(1 + entries.FindLastIndex(earlier => plan.Before[step, earlier]), step);
        var longest = layout.Gaps.Select(gap => gap.AtLeast!.Value).DefaultIfEmpty(0).Max();
        return [.. entries.Select(step => new Entry(layout.IdOf(step))
        {
            Stated = layout.IsWait(step) ? Duration.FromSeconds(longest) : null,
        })];
    }
}

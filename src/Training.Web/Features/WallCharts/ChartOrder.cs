using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;

namespace Training.Web.Features.WallCharts;

/// <summary>
/// The order of a procedure for all its kinds of vehicle at once. Whatever the engine asks of one kind, the chart asks of
/// all, so an order by the chart is right on each; what no wait joins may be done in any order on each.
/// </summary>
/// <param name="Places">The places, in an order that is right on every kind.</param>
/// <param name="Waits">Which place waits for which; no pair that others imply.</param>
public sealed record ChartOrder(IReadOnlyList<ChartPlace> Places, IReadOnlyList<LinePlanWait> Waits)
{
    /// <summary>Joins the orders of all kinds into one.</summary>
    /// <param name="procedure">A procedure that people can be graded by.</param>
    public static ChartOrder Of(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var orders = procedure.Kinds.Select(kind => KindOrder.Of(procedure, kind)).ToArray();
        var places = PlacesOf(procedure, orders);
        var place = places.SelectMany((steps, index) => steps, (steps, step) => step).ToDictionary(step => step, step => places.FindIndex(steps => steps.Contains(step)));
        LinePlanWait[] waits = [.. orders.SelectMany(order => order.Waits)
            .Select(wait => new LinePlanWait(place[wait.Before], place[wait.After])).Distinct().OrderBy(wait => wait.Before).ThenBy(wait => wait.After)];
        return new(
            [.. places.Select(steps => new ChartPlace([.. steps.SelectMany(step => Ways(procedure, step))], steps.Any(step => procedure.Steps[step].Variants.Count > 0)))],
            [.. waits.Where(wait => !IsImplied(wait, waits, at => places[at].All(step => procedure.Steps[step].IsOptional)))]);
    }

    // The listing is a right order on every kind. Neighbours that their author names in one breath share a place.
    private static List<List<int>> PlacesOf(Procedure procedure, KindOrder[] orders)
    {
        var places = new List<List<int>>();
        for (var step = 0; step < procedure.Steps.Count; step++)
        {
            if (!orders.Any(order => order.Steps.Contains(step))) continue;
            if (places.Count > 0 && AreOneForEachKind(procedure, places[^1], step)) places[^1].Add(step);
            else places.Add([step]);
        }

        return places;
    }

    private static bool AreOneForEachKind(Procedure procedure, List<int> place, int step)
    {
        Step[] steps = [.. place.Append(step).Select(number => procedure.Steps[number])];
        return steps.All(one => one.Variants.Count > 0 && one.Choice is null)
            && steps.SelectMany(one => one.Variants).Distinct().Count() == steps.Sum(one => one.Variants.Count)
            && procedure.Rules.OfType<OrderRule>().All(rule => AreSaidTogether(rule.First, rule.Then) && AreSaidTogether(rule.Then, rule.First));

        // A rule about what only one kind has can name but one of them.
        bool AreSaidTogether(IReadOnlyList<StepId> side, IReadOnlyList<StepId> other) =>
            steps.Select(one => side.Contains(one.Id)).Distinct().Count() == 1
            || other.All(id => procedure.Steps.First(one => one.Id == id).Variants.Count > 0);
    }

    private static IEnumerable<Step> Ways(Procedure procedure, int step) => procedure.Steps[step].Choice is { } choice
        ? procedure.Steps.Where(other => other.Choice == choice)
        : [procedure.Steps[step]];

    // A place that may be left out implies nothing between two that may not.
    private static bool IsImplied(LinePlanWait wait, LinePlanWait[] waits, Func<int, bool> isOptional)
    {
        var isWay = isOptional(wait.Before) || isOptional(wait.After) ? _ => true : (Func<int, bool>)(place => !isOptional(place));
        var reached = new HashSet<int> { wait.Before };
        foreach (var next in waits.Where(next => next != wait))
            if (reached.Contains(next.Before) && (next.After == wait.After || isWay(next.After))) reached.Add(next.After);
        return reached.Contains(wait.After);
    }

    // The steps of one kind of vehicle, by their numbers in the listing.
    private sealed record KindOrder(IReadOnlySet<int> Steps, IReadOnlyList<LinePlanWait> Waits)
    {
        public static KindOrder Of(Procedure procedure, VariantId? kind)
        {
            var numbers = procedure.Steps.Index().ToDictionary(step => step.Item.Id, step => step.Index);
            var order = Grader.For(procedure, kind).Match(grader => grader, faults => throw new ArgumentException(faults.ToString(), nameof(procedure))).Order();
            return new(
                order.Steps.Select(step => numbers[step]).ToHashSet(),
                [.. order.Waits.Select(wait => new LinePlanWait(numbers[wait.First], numbers[wait.Then]))]);
        }
    }
}

/// <summary>A place in the order.</summary>
/// <param name="Ways">What is done there: one step, one of several, or one for each kind of vehicle.</param>
/// <param name="IsForKinds">Whether each is for some of the kinds of vehicle only.</param>
public sealed record ChartPlace(IReadOnlyList<Step> Ways, bool IsForKinds);

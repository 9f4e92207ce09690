using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Ordering;

/// <summary>That one step comes before another, and the rule that says so.</summary>
internal readonly record struct OrderPair(int First, int Then, Rule Rule)
{
    /// <summary>Every <c>first</c>/<c>then</c> pair whose two steps are both in the set.</summary>
    public static List<OrderPair> Of(Layout layout, StepSet steps)
    {
        var pairs = new List<OrderPair>(layout.Links.Length);
        foreach (var link in layout.Links)
            if (steps.Has(link.First) && steps.Has(link.Then)) pairs.Add(new(link.First, link.Then, link.Rule));
        return pairs;
    }
}

namespace Training.Sequencing.Ordering;

/// <summary>The shortest loop of order pairs, by breadth-first search from every step.</summary>
internal static class ShortestLoop
{
    /// <summary>The pairs of a shortest loop in order; empty where there is none.</summary>
    public static IReadOnlyList<OrderPair> Of(IReadOnlyList<OrderPair> pairs, int stepCount)
    {
        var outgoing = new List<OrderPair>[stepCount];
        for (var s = 0; s < stepCount; s++) outgoing[s] = [];
        foreach (var pair in pairs) outgoing[pair.First].Add(pair);
        IReadOnlyList<OrderPair> shortest = [];
        for (var start = 0; start < stepCount; start++)
        {
            var loop = From(start, outgoing, stepCount);
            if (loop.Count > 0 && (shortest.Count == 0 || loop.Count < shortest.Count)) shortest = loop;
        }

        return shortest;
    }

    private static List<OrderPair> From(int start, List<OrderPair>[] outgoing, int stepCount)
    {
        var reachedBy = new OrderPair?[stepCount];
        var queue = new Queue<int>([start]);
        while (queue.TryDequeue(out var step))
        {
            foreach (var pair in outgoing[step])
            {
                if (pair.Then == start) return Walk(pair, start, reachedBy);
                if (reachedBy[pair.Then] is not null) continue;
                reachedBy[pair.Then] = pair;
                queue.Enqueue(pair.Then);
            }
        }

        return [];
    }

    private static List<OrderPair> Walk(OrderPair last, int start, OrderPair?[] reachedBy)
    {
        var loop = new List<OrderPair> { last };
        while (loop[^1].First != start) loop.Add(reachedBy[loop[^1].First]!.Value);
        loop.Reverse();
        return loop;
    }
}

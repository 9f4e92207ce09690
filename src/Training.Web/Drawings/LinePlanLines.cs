namespace Training.Web.Drawings;

/// <summary>
/// Which column every step and bar of a plan stands in. A node is a step, or a bar between two steps; the nodes stand
/// below each other in an order that is right.
/// </summary>
internal sealed class LinePlanLines
{
    private readonly int[] after;

    private LinePlanLines(IReadOnlyList<(int? Station, JunctionBar? Bar)> nodes, IReadOnlyList<(int Before, int After)> edges)
    {
        (Nodes, Edges) = (nodes, edges);
        Columns = PutInColumns(out after);
    }

    /// <summary>The nodes from the top down: a step by its place in the list, or a bar.</summary>
    public IReadOnlyList<(int? Station, JunctionBar? Bar)> Nodes { get; }

    /// <summary>Which node leads to which.</summary>
    public IReadOnlyList<(int Before, int After)> Edges { get; }

    /// <summary>The column of each node, from 0.</summary>
    public IReadOnlyList<int> Columns { get; }

    /// <summary>Whether the one node follows the other on its line.</summary>
    public bool Follows(int before, int node) => after[before] == node;

    /// <summary>Whether the line of a node ends with it, and runs into no bar.</summary>
    public bool Ends(int node) => after[node] < 0 && !EntersBar(node);

    private bool EntersBar(int node) => Edges.Any(edge => edge.Before == node && Nodes[edge.After].Bar is not null);

    public static LinePlanLines Of(LinePlanPicture plan)
    {
        var bars = JunctionBars.Of(plan.Waits, out var left);
        List<(int? Station, JunctionBar? Bar)> nodes = [];
        for (var station = 0; station < plan.Stations.Count; station++)
        {
            nodes.AddRange(bars.Where(bar => bar.Before.Count <= bar.After.Count ? bar.After[0] == station : bar.Before[^1] == station - 1)
                .Select(bar => ((int?)null, (JunctionBar?)bar)));
            nodes.Add((station, null));
        }

        var stations = nodes.Index().Where(node => node.Item.Station is not null).ToDictionary(node => node.Item.Station!.Value, node => node.Index);
        var edges = left.Select(wait => (stations[wait.Before], stations[wait.After]))
            .Concat(nodes.Index().Where(node => node.Item.Bar is not null).SelectMany(node =>
                node.Item.Bar!.Before.Select(station => (stations[station], node.Index))
                    .Concat(node.Item.Bar.After.Select(station => (node.Index, stations[station])))));
        return new(nodes, [.. edges.OrderBy(edge => edge.Item2).ThenBy(edge => edge.Item1)]);
    }

    /// <summary>
    /// Puts each node behind one that it waits for where that one has no follower yet; otherwise it opens a line. A line
    /// gives its column to another once it has ended and nothing further down waits for a node on it.
    /// </summary>
    private int[] PutInColumns(out int[] next)
    {
        next = new int[Nodes.Count];
        Array.Fill(next, -1);
        var line = new int[Nodes.Count];
        List<(int First, int Last)> ends = [];
        for (var node = 0; node < Nodes.Count; node++)
        {
            var followers = next;
            int[] before = [.. Edges.Where(edge => edge.After == node).Select(edge => edge.Before)];
            int[] bars = [.. before.Where(other => Nodes[other].Bar is not null)];
            var behind = (bars.Length > 0 ? bars : before).Where(other => followers[other] < 0 && MayFollow(other, node)).DefaultIfEmpty(-1).Max();
            if (behind < 0)
            {
                // A line that begins at a bar needs its column from the bar on.
                var first = bars.DefaultIfEmpty(node).Min();
                line[node] = ends.Count;
                ends.Add((first, node));
                continue;
            }

            next[behind] = node;
            line[node] = line[behind];
            ends[line[node]] = (ends[line[node]].First, node);
        }

        foreach (var (before, node) in Edges)
        {
            var (first, last) = ends[line[before]];
            if (Nodes[before].Bar is null) ends[line[before]] = (first, Math.Max(last, node - 1));
        }

        return [.. line.Select(ColumnsOf(ends).ElementAt)];
    }

    // Where a step enters a bar, its line runs down to the bar and to nothing else.
    private bool MayFollow(int before, int node) => Nodes[node].Bar is not null || !EntersBar(before);

    private static int[] ColumnsOf(List<(int First, int Last)> lines)
    {
        List<int> freeFrom = [];
        var column = new int[lines.Count];
        foreach (var (index, span) in lines.Index().OrderBy(line => line.Item.First))
        {
            var place = freeFrom.FindIndex(end => end < span.First);
            if (place < 0)
            {
                place = freeFrom.Count;
                freeFrom.Add(0);
            }

            freeFrom[place] = span.Last;
            column[index] = place;
        }

        return column;
    }
}

using System.Numerics;
using Training.Sequencing.Ordering;

namespace Training.Sequencing.Mending;

/// <summary>
/// The largest matching between two copies of a set of entries, on bit rows: in each phase a breadth-first search finds
/// how far the nearest free partner is, and shortest augmenting paths that share nothing are taken
/// (J. E. Hopcroft and R. M. Karp, SIAM Journal on Computing 2, 1973). At most about 2·√n phases.
/// </summary>
internal sealed class LargestMatching
{
    private readonly BitRows edges;
    private readonly int[] left;
    private readonly int[] right;
    private readonly List<ulong[]> layers = [];
    private readonly int[] queue;

    private LargestMatching(BitRows edges)
    {
        this.edges = edges;
        left = new int[edges.Rows];
        right = new int[edges.Rows];
        queue = new int[edges.Rows];
        Array.Fill(left, -1);
        Array.Fill(right, -1);
    }

    /// <summary>How many pairs are matched.</summary>
    public int Size { get; private set; }

    public static LargestMatching Of(BitRows edges)
    {
        var matching = new LargestMatching(edges);
        matching.TakeWhatIsFree();
        while (matching.Reach()) matching.Augment();
        return matching;
    }

    /// <summary>
    /// The largest set of entries of which no two are joined by an edge: by Kőnig's theorem those whose left copy is
    /// reached from a free one by alternating paths while their right copy is not (for a partial order this set is
    /// Dilworth's; R. P. Dilworth, Annals of Mathematics 51, 1950; D. R. Fulkerson, Proc. AMS 7, 1956).
    /// </summary>
    public bool[] Antichain()
    {
        var leftReached = new bool[edges.Rows];
        var unreached = AllRight();
        var open = 0;
        for (var l = 0; l < edges.Rows; l++)
        {
            if (left[l] >= 0) continue;
            leftReached[l] = true;
            queue[open++] = l;
        }

        while (open > 0)
        {
            var row = edges.Row(queue[--open]);
            for (var w = 0; w < row.Length; w++)
            {
                for (var fresh = row[w] & unreached[w]; fresh != 0; fresh &= fresh - 1)
                {
                    var r = (w << 6) + BitOperations.TrailingZeroCount(fresh);
                    unreached[w] &= ~(1UL << r);
                    leftReached[right[r]] = true;
                    queue[open++] = right[r];
                }
            }
        }

        var antichain = new bool[edges.Rows];
        for (var e = 0; e < antichain.Length; e++) antichain[e] = leftReached[e] && (unreached[e >> 6] >> e & 1) != 0;
        return antichain;
    }

    private void TakeWhatIsFree()
    {
        var free = AllRight();
        for (var l = 0; l < left.Length; l++)
        {
            var row = edges.Row(l);
            for (var w = 0; w < row.Length; w++)
            {
                var fits = row[w] & free[w];
                if (fits == 0) continue;
                var r = (w << 6) + BitOperations.TrailingZeroCount(fits);
                free[w] &= ~(1UL << r);
                Match(l, r);
                Size++;
                break;
            }
        }
    }

    /// <summary>Layers the right copies by their distance from a free left one, up to the first free right one.</summary>
    private bool Reach()
    {
        layers.Clear();
        var unreached = AllRight();
        var (from, to) = (0, 0);
        for (var l = 0; l < left.Length; l++)
            if (left[l] < 0) queue[to++] = l;
        var found = false;
        while (from < to && !found)
        {
            var layer = new ulong[edges.Words];
            var end = to;
            for (; from < end; from++)
            {
                var row = edges.Row(queue[from]);
                for (var w = 0; w < row.Length; w++)
                {
                    var fresh = row[w] & unreached[w];
                    unreached[w] &= ~fresh;
                    layer[w] |= fresh;
                    for (; fresh != 0; fresh &= fresh - 1)
                    {
                        var mate = right[(w << 6) + BitOperations.TrailingZeroCount(fresh)];
                        if (mate < 0) found = true;
                        else queue[to++] = mate;
                    }
                }
            }

            layers.Add(layer);
        }

        return found;
    }

    private void Augment()
    {
        var path = new (int Left, int Right)[layers.Count];
        for (var l = 0; l < left.Length; l++)
        {
            if (left[l] >= 0) continue;
            var depth = 0;
            path[0].Left = l;
            while (depth >= 0)
            {
                var r = TakeFromLayer(path[depth].Left, depth);
                if (r < 0)
                {
                    depth--;
                    continue;
                }

                path[depth].Right = r;
                if (right[r] < 0)
                {
                    for (var d = depth; d >= 0; d--) Match(path[d].Left, path[d].Right);
                    Size++;
                    break;
                }

                if (depth + 1 < layers.Count) path[++depth].Left = right[r];
            }
        }
    }

    private int TakeFromLayer(int l, int depth)
    {
        var row = edges.Row(l);
        var layer = layers[depth];
        for (var w = 0; w < row.Length; w++)
        {
            var fits = row[w] & layer[w];
            if (fits == 0) continue;
            var r = (w << 6) + BitOperations.TrailingZeroCount(fits);
            layer[w] &= ~(1UL << r);
            return r;
        }

        return -1;
    }

    private void Match(int l, int r)
    {
        left[l] = r;
        right[r] = l;
    }

    private ulong[] AllRight()
    {
        var all = new ulong[edges.Words];
        Array.Fill(all, ulong.MaxValue);
        return all;
    }
}

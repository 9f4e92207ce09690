namespace Training.Sequencing.Ordering;

/// <summary>
/// What follows from order pairs: a before b and b before c puts a before c. One pass over the steps from the last to
/// the first where every pair runs forward in the listing, otherwise the bit-row form of Warshall's algorithm
/// (S. Warshall, "A theorem on Boolean matrices", Journal of the ACM 9, 1962).
/// </summary>
internal static class Closure
{
    /// <summary>For every step (a row) the steps that come after it.</summary>
    public static BitRows Of(IReadOnlyList<OrderPair> pairs, int stepCount)
    {
        var after = new BitRows(stepCount, stepCount);
        var forward = true;
        for (var p = 0; p < pairs.Count; p++)
        {
            after.Set(pairs[p].First, pairs[p].Then);
            forward &= pairs[p].First < pairs[p].Then;
        }

        if (forward) CloseForward(after, stepCount);
        else CloseAny(after, stepCount);
        return after;
    }

    /// <summary>The same relation read the other way: for every step the steps that come before it.</summary>
    public static BitRows Turned(BitRows rows)
    {
        var turned = new BitRows(rows.Rows, rows.Rows);
        for (var a = 0; a < rows.Rows; a++)
            foreach (var b in new EachBit(rows.Row(a))) turned.Set(b, a);
        return turned;
    }

    private static void CloseForward(BitRows after, int stepCount)
    {
        for (var a = stepCount - 2; a >= 0; a--)
            for (var b = a + 1; b < stepCount; b++)
                if (after[a, b]) after.Join(a, b);
    }

    private static void CloseAny(BitRows after, int stepCount)
    {
        for (var middle = 0; middle < stepCount; middle++)
            for (var a = 0; a < stepCount; a++)
                if (after[a, middle]) after.Join(a, middle);
    }
}

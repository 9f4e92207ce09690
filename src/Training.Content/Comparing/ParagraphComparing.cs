using DiffPlex;

namespace Training.Content.Comparing;

/// <summary>Which paragraphs of a text are new, gone or changed. Those that stand in one place of both are held against each other.</summary>
internal static class ParagraphComparing
{
    private const int MostParagraphs = 4_000;

    public static IReadOnlyList<PartComparison> Of(IReadOnlyList<FilePart> before, IReadOnlyList<FilePart> after)
    {
        if (before.Count + after.Count > MostParagraphs) return Pairs(before, after);
        var result = Differ.Instance.CreateDiffs("before", "after", ignoreWhiteSpace: false, ignoreCase: false, new Given(before, after));
        return [.. result.DiffBlocks.SelectMany(block => Pairs(
            [.. before.Skip(block.DeleteStartA).Take(block.DeleteCountA)], [.. after.Skip(block.InsertStartB).Take(block.InsertCountB)]))];
    }

    private static IReadOnlyList<PartComparison> Pairs(IReadOnlyList<FilePart> gone, IReadOnlyList<FilePart> isNew)
    {
        List<PartComparison> parts = [];
        for (var p = 0; p < Math.Max(gone.Count, isNew.Count); p++)
        {
            var (was, isNow) = (p < gone.Count ? gone[p] : null, p < isNew.Count ? isNew[p] : null);
            if (was?.Text == isNow?.Text) continue;
            parts.Add(new(
                PartComparison.Made(was?.Text, isNow?.Text), (isNow ?? was)!.Name, IsKey: false, WordDifference.Of(was?.Text ?? "", isNow?.Text ?? "")));
        }

        return parts;
    }

    /// <summary>The paragraphs are known already; the library asks for them by the names that it was given.</summary>
    private sealed class Given(IReadOnlyList<FilePart> before, IReadOnlyList<FilePart> after) : IChunker
    {
        public IReadOnlyList<string> Chunk(string text) => [.. (text == "before" ? before : after).Select(part => part.Text)];
    }
}

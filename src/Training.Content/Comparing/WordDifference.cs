using DiffPlex;

namespace Training.Content.Comparing;

/// <summary>Two texts word by word: what both have, what is gone and what is new, in the order in which it is read.</summary>
/// <param name="Pieces">The pieces; those that stay and those that are gone make the older text, letter for letter.</param>
public sealed record WordDifference(IReadOnlyList<WordPiece> Pieces)
{
    // Beyond this the search for what both have takes longer than anybody waits, and nobody reads it word by word.
    private const int MostWords = 4_000;
    private static readonly char[] Separators = [' ', '\t', '\r', '\n', '.', ',', ';', ':', '(', ')', '[', ']', '“', '”', '"'];

    /// <summary>Compares two texts.</summary>
    /// <param name="before">The older.</param>
    /// <param name="after">The newer.</param>
    public static WordDifference Of(string before, string after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (before == after) return new(before.Length == 0 ? [] : [new(PieceKind.Same, before)]);
        if (CountOf(before) + CountOf(after) > MostWords) return new([.. Whole(before, after)]);
        var result = Differ.Instance.CreateWordDiffs(before, after, ignoreWhitespace: false, ignoreCase: false, Separators);
        List<WordPiece> pieces = [];
        var at = 0;
        foreach (var block in result.DiffBlocks)
        {
            Add(PieceKind.Same, result.PiecesOld, at, block.DeleteStartA);
            at = block.DeleteStartA + block.DeleteCountA;
            Add(PieceKind.Gone, result.PiecesOld, block.DeleteStartA, at);
            Add(PieceKind.New, result.PiecesNew, block.InsertStartB, block.InsertStartB + block.InsertCountB);
        }

        Add(PieceKind.Same, result.PiecesOld, at, result.PiecesOld.Count);
        return new(pieces);

        void Add(PieceKind kind, IReadOnlyList<string> words, int from, int to)
        {
            if (from < to) pieces.Add(new(kind, string.Concat(words.Skip(from).Take(to - from))));
        }
    }

    private static IEnumerable<WordPiece> Whole(string before, string after)
    {
        if (before.Length > 0) yield return new(PieceKind.Gone, before);
        if (after.Length > 0) yield return new(PieceKind.New, after);
    }

    private static int CountOf(string text) => 2 * text.AsSpan().CountAny(Separators);
}

/// <summary>A piece of a comparison.</summary>
/// <param name="Kind">Which of the two texts has it.</param>
/// <param name="Text">What it says.</param>
public readonly record struct WordPiece(PieceKind Kind, string Text);

/// <summary>Which of two texts a piece stands in.</summary>
public enum PieceKind
{
    /// <summary>Both.</summary>
    Same,

    /// <summary>The older alone.</summary>
    Gone,

    /// <summary>The newer alone.</summary>
    New,
}

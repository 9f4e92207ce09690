using System.Globalization;

namespace Training.Content;

/// <summary>Something that an author should know about a file, with the place where it stands.</summary>
/// <param name="File">The file, as its <see cref="ContentFile.Path"/> names it.</param>
/// <param name="Line">The line, from 1.</param>
/// <param name="Column">The column in UTF-16 units, from 1.</param>
/// <param name="Level">Whether it forbids publishing.</param>
/// <param name="Sentence">What is wrong and what to do.</param>
public sealed record ContentProblem(string File, int Line, int Column, ProblemLevel Level, string Sentence)
{
    /// <summary>Whether the content is not published before this is mended.</summary>
    public bool HoldsBack => Level != ProblemLevel.Remark;

    /// <summary>One line in the form of the contract: <c>file:line:column: error: sentence</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}: {(HoldsBack ? "error" : "remark")}: {Sentence}");
}

/// <summary>How grave a problem is.</summary>
public enum ProblemLevel
{
    /// <summary>Worth knowing; the content can be published.</summary>
    Remark,

    /// <summary>
    /// The content is not published before it is mended, but it can be read: what was published before anybody asked for
    /// this is served on.
    /// </summary>
    Held,

    /// <summary>The content cannot be read, and is not published before it is mended.</summary>
    Error,
}

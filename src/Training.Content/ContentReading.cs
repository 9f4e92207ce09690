namespace Training.Content;

/// <summary>What a reading of content files gave.</summary>
/// <param name="Library">
/// What was read; null where anything cannot be read. It may be there though the content is not fit to be published: so is
/// what was published before somebody asked for more.
/// </param>
/// <param name="Problems">Everything that an author should know, by file and line.</param>
public sealed record ContentReading(ContentLibrary? Library, IReadOnlyList<ContentProblem> Problems)
{
    /// <summary>Whether the content may be published: all of it can be read, and nothing holds it back.</summary>
    public bool IsFit => !Problems.Any(problem => problem.HoldsBack);
}

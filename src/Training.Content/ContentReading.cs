namespace Training.Content;

/// <summary>What a reading of content files gave.</summary>
/// <param name="Library">What was read; null where any error stands.</param>
/// <param name="Problems">Everything that an author should know, by file and line.</param>
public sealed record ContentReading(ContentLibrary? Library, IReadOnlyList<ContentProblem> Problems);

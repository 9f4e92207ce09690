using NodaTime;
using Training.Content;

namespace Training.Records.Publishing;

/// <summary>
/// What is served now: the newest publication, read. One for the whole process; a new publication is swapped in whole,
/// so take <see cref="Current"/> once per request.
/// </summary>
public sealed class Library
{
    private volatile PublishedLibrary current = new(
        0, default, ContentReader.Read([]).Library ?? throw new InvalidOperationException("No content at all must read as an empty library."));

    /// <summary>The publication that is served. Empty (number 0) until something has been published.</summary>
    public PublishedLibrary Current => current;

    internal void Serve(PublishedLibrary library) => current = library;
}

/// <summary>A publication and what it says.</summary>
/// <param name="Number">Its number, counted from 1; 0 for none.</param>
/// <param name="PublishedAt">When it was published.</param>
/// <param name="Content">What it says; each part carries the file that it was read from, and so its hash.</param>
public sealed record PublishedLibrary(int Number, Instant PublishedAt, ContentLibrary Content);

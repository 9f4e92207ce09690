using NodaTime;
using Training.Content;
using Training.Content.Comparing;

namespace Training.Records.Publishing;

/// <summary>A file that changed since it was first published.</summary>
/// <param name="Path">Where it stands below <c>content/</c>.</param>
/// <param name="Revisions">How many revisions of it were published.</param>
/// <param name="At">When the newest of them was published.</param>
/// <param name="IsServed">Whether it is still served.</param>
public sealed record RevisedFile(string Path, int Revisions, Instant At, bool IsServed);

/// <summary>A text of a file that was served for a time.</summary>
/// <param name="Text">The hash of the text.</param>
/// <param name="Publication">The publication that brought it.</param>
/// <param name="At">When that was.</param>
/// <param name="Until">When it was served no more; null where it still is.</param>
public sealed record Revision(ContentHash Text, int Publication, Instant At, Instant? Until);

/// <summary>Two revisions held against each other.</summary>
/// <param name="Before">The older.</param>
/// <param name="After">The newer.</param>
/// <param name="Comparison">What is different.</param>
/// <param name="Judged">What was judged by the older.</param>
public sealed record ComparedRevisions(Revision Before, Revision After, FileComparison Comparison, JudgedCounts Judged);

/// <summary>What was judged by a text. It stays judged by that text, whatever is published later.</summary>
/// <param name="Records">Competency records that rest on it.</param>
/// <param name="Papers">Papers that were begun with it.</param>
/// <param name="Runs">Observed runs that were judged by it, abandoned ones not counted.</param>
/// <param name="Tries">Practice answers that were judged by it.</param>
public sealed record JudgedCounts(int Records, int Papers, int Runs, int Tries)
{
    /// <summary>Whether nothing was.</summary>
    public bool IsNone => Records + Papers + Runs + Tries == 0;
}

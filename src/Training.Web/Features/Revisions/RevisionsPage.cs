using Training.Records.Publishing;

namespace Training.Web.Features.Revisions;

/// <summary>The files that have changed.</summary>
/// <param name="Files">The files, the newest change first.</param>
/// <param name="Zone">The zone that times are told in.</param>
public sealed record RevisedFilesPage(IReadOnlyList<RevisedFile> Files, string Zone);

/// <summary>The revisions of one file.</summary>
/// <param name="Path">The file.</param>
/// <param name="Revisions">Its revisions, the newest first.</param>
/// <param name="Zone">The zone that times are told in.</param>
public sealed record RevisionsPage(string Path, IReadOnlyList<Revision> Revisions, string Zone)
{
    /// <summary>Two of them compared; null where there is just one.</summary>
    public ComparedRevisions? Compared { get; init; }
}

namespace Training.Content.Writing;

/// <summary>
/// A draft read as it is previewed: among the other drafts on the desk as far as they can be read, so that nobody's half a
/// sentence keeps a colleague from looking at their own work.
/// </summary>
/// <param name="Report">What was read.</param>
/// <param name="LeftOut">The other drafts that were not taken in; what is published stands in for them.</param>
public sealed record PreviewReading(DraftReport Report, IReadOnlyList<string> LeftOut)
{
    /// <summary>Reads a draft among what is published and the other drafts.</summary>
    /// <param name="desk">What is published, and what lies on the desk.</param>
    /// <param name="draft">The draft.</param>
    public static PreviewReading Of(DeskFiles desk, ContentFile draft)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(draft);
        List<ContentFile> others = [.. desk.Drafts.Where(other => other.Path != draft.Path)];
        List<string> left = [];
        while (true)
        {
            var report = DraftCheck.Of(new DeskFiles(desk.Served, others).Together, draft);
            var broken = report.AllProblems.Where(problem => problem.Level == ProblemLevel.Error).Select(problem => problem.File).ToHashSet(StringComparer.Ordinal);
            if (report.Library is not null || others.Count == 0) return new(report, [.. left.Order(StringComparer.Ordinal)]);
            // What breaks a file that is published, as a step that is gone, cannot be told from the others: then none is taken in.
            List<ContentFile> bad = others.Exists(other => broken.Contains(other.Path)) ? [.. others.Where(other => broken.Contains(other.Path))] : [.. others];
            // Whoever's own draft is at fault is told that first, with the others as they are.
            if (broken.SetEquals([draft.Path])) return new(report, left);
            left.AddRange(bad.Select(other => other.Path));
            others.RemoveAll(bad.Contains);
        }
    }
}

/// <summary>The content as it is published, and the drafts on the desk beside it.</summary>
/// <param name="Served">What is published.</param>
/// <param name="Drafts">The newest texts of the drafts in work or offered.</param>
public sealed record DeskFiles(IReadOnlyList<ContentFile> Served, IReadOnlyList<ContentFile> Drafts)
{
    /// <summary>The files as they would be with every draft published.</summary>
    public IReadOnlyList<ContentFile> Together => [.. Served.ExceptBy(Drafts.Select(file => file.Path), file => file.Path), .. Drafts];
}

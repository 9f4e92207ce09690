using Training.Content.Procedures;
using Training.Sequencing.Comparing;

namespace Training.Content.Comparing;

/// <summary>What a file of content says that it did not say before.</summary>
/// <param name="Path">Where it stands below <c>content/</c>.</param>
/// <param name="Kind">Whether the file is new, gone or changed; null where it is the same, byte for byte.</param>
public sealed record FileComparison(string Path, ChangeKind? Kind)
{
    /// <summary>
    /// Its keys and paragraphs that differ, in their order; empty for a procedure that can be read, and for a picture. A
    /// changed file without any differs in remarks of its author or in how it is set, and says the same.
    /// </summary>
    public IReadOnlyList<PartComparison> Parts { get; init; } = [];

    /// <summary>What it means for a procedure; null for all else, and where either side has none that can be read.</summary>
    public ProcedureComparison? Procedure { get; init; }

    /// <summary>Whether it is a picture, of which nothing more is told than that it differs.</summary>
    public bool IsPicture { get; init; }

    /// <summary>Whether the file differs and nothing that it says does.</summary>
    public bool SaysTheSame => Kind == ChangeKind.Changed && !IsPicture && Parts.Count == 0 && Procedure is null or { IsSame: true };

    /// <summary>Compares two states of one file.</summary>
    /// <param name="before">The older; null where there was none.</param>
    /// <param name="after">The newer; null where there is none.</param>
    /// <exception cref="ArgumentException">Neither is there, or they stand at two places: a fault of ours.</exception>
    public static FileComparison Of(ContentFile? before, ContentFile? after)
    {
        var path = (after ?? before)?.Path ?? throw new ArgumentException("There is nothing to compare.", nameof(after));
        if (before is not null && before.Path != path) throw new ArgumentException("These are two files.", nameof(before));
        var place = ContentPlace.Of(path);
        ChangeKind? kind = before is null ? ChangeKind.New : after is null ? ChangeKind.Gone : before.Text == after.Text ? null : ChangeKind.Changed;
        if (kind is null) return new(path, null);
        if (place is { Sort: ContentSort.Picture }) return new(path, kind) { IsPicture = true };
        if (place is { Sort: ContentSort.Procedure, Language: null } && before is not null && after is not null
            && ProcedureOf(before) is { } old && ProcedureOf(after) is { } now)
            return new(path, kind) { Procedure = ProcedureComparison.Of(old, now) };
        return new(path, kind) { Parts = PartComparison.Of(FileParts.Of(before), FileParts.Of(after)) };
    }

    private static Training.Sequencing.Procedures.Procedure? ProcedureOf(ContentFile file) =>
        ProcedureDraft.Read(file, ProcedureDemands.ToGrade).Procedure;
}

/// <summary>A key or a paragraph that differs.</summary>
/// <param name="Kind">Whether it is new, gone or changed.</param>
/// <param name="Name">The key, such as <c>paper.time</c>, or the heading that a paragraph stands below; empty where there is none.</param>
/// <param name="IsKey">Whether it is a key of the file's head.</param>
/// <param name="Words">What it says, word by word.</param>
public sealed record PartComparison(ChangeKind Kind, string Name, bool IsKey, WordDifference Words)
{
    internal static IReadOnlyList<PartComparison> Of(FileParts before, FileParts after) =>
    [
        .. OfKeys(before.Keys, after.Keys),
        .. ParagraphComparing.Of(before.Paragraphs, after.Paragraphs),
    ];

    private static IEnumerable<PartComparison> OfKeys(IReadOnlyList<FilePart> before, IReadOnlyList<FilePart> after)
    {
        var (old, now) = (before.ToLookup(part => part.Name), after.ToLookup(part => part.Name));
        foreach (var name in after.Select(part => part.Name).Concat(before.Select(part => part.Name)).Distinct())
        {
            var (was, isNow) = (Whole(old[name]), Whole(now[name]));
            if (was == isNow) continue;
            yield return new(Made(was, isNow), name, IsKey: true, WordDifference.Of(was ?? "", isNow ?? ""));
        }

        static string? Whole(IEnumerable<FilePart> parts) => parts.Any() ? string.Join('\n', parts.Select(part => part.Text)) : null;
    }

    internal static ChangeKind Made(string? before, string? after) =>
        before is null ? ChangeKind.New : after is null ? ChangeKind.Gone : ChangeKind.Changed;
}

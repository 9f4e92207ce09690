using Training.Content.Comparing;
using Training.Content.Glossary;
using Training.Sequencing.Analysis;

namespace Training.Content.Packing;

/// <summary>What a pack would bring to the content that is here. Nothing is changed by looking.</summary>
/// <param name="Pack">The pack.</param>
/// <param name="Lines">What each file would bring, in the order of their paths.</param>
/// <param name="Problems">What the check says of the content with the pack laid over it, about the files of the pack alone.</param>
/// <param name="WordsKept">Words of the trade that mean something else in the pack: those that are here stay.</param>
public sealed record PackIntake(Pack Pack, IReadOnlyList<PackLine> Lines, IReadOnlyList<ContentProblem> Problems, IReadOnlyList<Term> WordsKept)
{
    // A pack of strangers must not make the house count for hours; whether a question can be drawn shows with few orders, too.
    private static readonly AnalysisLimits Limits = new(20_000, 50);

    /// <summary>The texts that would be written: those that are new or differ.</summary>
    public IReadOnlyList<ContentFile> ToWrite => [.. Lines.Where(line => line.Comparison.Kind is not null).Select(line => line.File)];

    /// <summary>Holds a pack against the content that is here.</summary>
    /// <param name="pack">The pack.</param>
    /// <param name="here">All files of the content.</param>
    public static PackIntake Of(Pack pack, IReadOnlyList<ContentFile> here)
    {
        ArgumentNullException.ThrowIfNull(pack);
        ArgumentNullException.ThrowIfNull(here);
        var known = here.ToDictionary(file => file.Path, StringComparer.Ordinal);
        List<PackLine> lines = [];
        List<Term> kept = [];
        foreach (var file in pack.Files)
        {
            var ours = known.GetValueOrDefault(file.Path);
            var theirs = file;
            if (ours is not null && ContentPlace.Of(file.Path) is { Sort: ContentSort.Glossary } place
                && GlossaryText.Joined(ours, file, place.Id) is { } joined)
            {
                theirs = file with { Text = joined.Text };
                kept.AddRange(joined.KeptOurs);
            }

            lines.Add(new(theirs, FileComparison.Of(ours, theirs)));
        }

        foreach (var line in lines) known[line.File.Path] = line.File;
        var paths = lines.Select(line => line.File.Path).ToHashSet(StringComparer.Ordinal);
        var problems = ContentReader.Read([.. known.Values.OrderBy(file => file.Path, StringComparer.Ordinal)], Limits).Problems;
        return new(pack, lines, [.. problems.Where(problem => paths.Contains(problem.File))], kept);
    }
}

/// <summary>What a file of a pack would bring.</summary>
/// <param name="File">The file as it would be written.</param>
/// <param name="Comparison">What is different from the one that is here.</param>
public sealed record PackLine(ContentFile File, FileComparison Comparison);

using System.Text.RegularExpressions;

namespace Training.Content.Writing;

/// <summary>
/// The files that what is said of a draft can depend on: those whose names stand in its text, the other parts of the same
/// module or of the same procedure, and what those name in turn. Reading these alone finds the same problems in the draft as
/// reading everything, and is quick enough for every pause in typing.
/// </summary>
public static partial class Surroundings
{
    // A competency names scenarios, which name procedures.
    private const int Deepest = 2;

    /// <summary>The files around a draft, without the draft.</summary>
    /// <param name="files">All files of the content.</param>
    /// <param name="draft">The draft.</param>
    public static IReadOnlyList<ContentFile> Of(IReadOnlyList<ContentFile> files, ContentFile draft)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(draft);
        var placed = files.Where(file => file.Path != draft.Path)
            .Select(file => (File: file, Place: ContentPlace.Of(file.Path))).Where(item => item.Place is not null).ToLookup(item => item.Place!.Id);
        var chosen = new Dictionary<string, ContentFile>(StringComparer.Ordinal);
        var own = ContentPlace.Of(draft.Path);
        foreach (var (file, place) in own is null ? [] : placed[own.Id])
            if (place!.Sort == own!.Sort || (place.Sort, own.Sort) is (ContentSort.Picture, ContentSort.Lesson) or (ContentSort.Picture or ContentSort.Lesson, ContentSort.Labels)) chosen[file.Path] = file;
        foreach (var (file, _) in placed.SelectMany(group => group).Where(item => item.Place is { Sort: ContentSort.Glossary })) chosen[file.Path] = file;
        // What teaches or asks a procedure names it, and not the other way round.
        if (own is { Sort: ContentSort.Procedure })
            foreach (var (file, _) in placed.SelectMany(group => group).Where(item => item.Place is { Sort: ContentSort.Lesson, Language: null }))
                if (file.Text.Contains(own.Id, StringComparison.Ordinal)) chosen[file.Path] = file;
        IReadOnlyList<ContentFile> edge = [draft, .. chosen.Values.Where(file => ContentPlace.Of(file.Path)!.Sort == own?.Sort)];
        for (var depth = 0; depth < Deepest; depth++)
        {
            List<ContentFile> next = [];
            foreach (var (file, place) in edge.SelectMany(file => Name().Matches(file.Text)).Select(match => match.Value).Distinct().SelectMany(name => placed[name]))
                if (place is { Language: null } && place.Sort != ContentSort.Picture && chosen.TryAdd(file.Path, file)) next.Add(file);
            edge = [.. next.Where(file => !file.Path.StartsWith("modules/", StringComparison.Ordinal))];
        }

        return [.. chosen.Values];
    }

    [GeneratedRegex("[a-z0-9]+(?:-[a-z0-9]+)*", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}

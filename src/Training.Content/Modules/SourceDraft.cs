using Training.Content.Rendering;
using Training.Content.Yaml;

namespace Training.Content.Modules;

/// <summary>A source as its entry has it, sound or not. In a translation it may have words alone: the rest is the lesson's.</summary>
internal sealed record SourceDraft(Place Place, YamlText? Id, string? Name, string? Where, SourceKind? Kind)
{
    /// <summary>The source; null where anything of it is missing.</summary>
    public Source? Source => Name is null || Where is null || Kind is null ? null : new Source(Name, Where, Kind.Value) { Id = Id?.Text };

    public static SourceDraft? Read(YamlNode node, ProblemList problems, bool isTranslation)
    {
        if (Fields.Open(node, "A source", problems, "id", "name", "where", "kind") is not { } fields) return null;
        var (name, where, kind, id) = (
            fields.Text("name", needed: !isTranslation || !fields.Has("where")), fields.Text("where", needed: !isTranslation),
            fields.Code<SourceKind>("kind", needed: !isTranslation), fields.Text("id"));
        if (id is not null && !SourceMark.IsId(id.Text))
            problems.Error(id.Place, $"\"{Fields.Shown(id.Text)}\" names no source: use letters, digits and hyphens, 40 at most.");
        return new(fields.Place, id, name?.Text, where?.Text, kind);
    }

    /// <summary>A source in a language: with the words that are given, and its own in place of those that are not.</summary>
    /// <param name="original">The source in the default language.</param>
    /// <param name="language">The language of the words.</param>
    public Source Over(Source original, string language) => original with
    {
        Name = Name ?? original.Name,
        Language = Name is null ? original.Language : language,
        Where = Where ?? original.Where,
        WhereLanguage = Where is null ? original.WhereLanguage : language,
    };

    /// <summary>
    /// Sources in a language. The words are found by the ids; where none has an id, by the places, if there are as many.
    /// </summary>
    public static IReadOnlyList<Source> In(IReadOnlyList<Source> originals, IReadOnlyList<SourceDraft> words, string language)
    {
        var byPlace = words.All(entry => entry.Id is null) && words.Count == originals.Count;
        return
        [
            .. originals.Select((original, place) =>
                (byPlace ? words[place] : words.FirstOrDefault(entry => entry.Id is { } id && id.Text == original.Id))?.Over(original, language) ?? original),
        ];
    }
}

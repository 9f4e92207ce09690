using Markdig.Syntax;
using Training.Content.Rendering;
using Training.Content.Yaml;

namespace Training.Content.Modules;

/// <summary>A lesson as its file has it, sound or not.</summary>
internal sealed record LessonDraft(ContentFile File, string Language, ProblemList Problems)
{
    /// <summary>Whether its head could be read; if not, nothing is known of what it teaches.</summary>
    public bool HasHead { get; private init; }

    public YamlText? Title { get; private init; }

    public int? Minutes { get; private init; }

    public Place MinutesPlace { get; private init; }

    public IReadOnlyList<YamlText> Procedures { get; private init; } = [];

    public Place ProceduresPlace { get; private init; }

    public IReadOnlyList<Source> Sources { get; private init; } = [];

    /// <summary>The names of the sources, also of those that are not written as a source is.</summary>
    public IReadOnlyList<string> SourceIds { get; private init; } = [];

    public Place SourcesPlace { get; private init; }

    public MarkdownDocument Document { get; private init; } = [];

    public LessonOutline Outline { get; private init; } = LessonOutline.Of([]);

    public Lesson Lesson => new(Language, Title?.Text ?? "", File) { Sources = Sources };

    /// <summary>Reads a lesson; a translation need not repeat what is not text.</summary>
    public static LessonDraft Read(ContentFile file, string language, bool isTranslation)
    {
        var problems = new ProblemList(file.Path);
        var front = FrontMatter.Read(file, problems);
        var draft = new LessonDraft(file, language, problems);
        if (LessonText.Parse(front, problems) is { } document)
            draft = draft with { Document = document, Outline = LessonOutline.Of(document) };
        if (front.Head is null || Fields.Open(front.Head, "A lesson", problems, "title", "minutes", "procedures", "sources") is not { } fields)
            return draft;
        var sources = fields.Items("sources").Select(node => SourceOf(node, problems)).ToArray();
        return draft with
        {
            HasHead = true,
            Title = fields.Text("title", needed: true),
            Minutes = fields.Whole("minutes", 1, 600, needed: !isTranslation),
            MinutesPlace = fields.PlaceOf("minutes"),
            Procedures = fields.Ids("procedures"),
            ProceduresPlace = fields.PlaceOf("procedures"),
            Sources = [.. sources.Select(source => source.Source).OfType<Source>()],
            SourceIds = [.. sources.Select(source => source.Id).OfType<string>()],
            SourcesPlace = fields.PlaceOf("sources"),
        };
    }

    internal static (string? Id, Source? Source) SourceOf(YamlNode node, ProblemList problems)
    {
        if (Fields.Open(node, "A source", problems, "id", "name", "where", "kind") is not { } fields) return default;
        var (name, where, kind, id) = (
            fields.Text("name", needed: true), fields.Text("where", needed: true), fields.Code<SourceKind>("kind", needed: true), fields.Text("id"));
        if (id is not null && !SourceMark.IsId(id.Text))
            problems.Error(id.Place, $"\"{Fields.Shown(id.Text)}\" names no source: use letters, digits and hyphens, 40 at most.");
        var source = name is null || where is null || kind is null ? null : new Source(name.Text, where.Text, kind.Value) { Id = id?.Text };
        return (id?.Text, source);
    }
}

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

    /// <summary>The entries of its sources; in a translation, their words.</summary>
    public IReadOnlyList<SourceDraft> SourceEntries { get; private init; } = [];

    /// <summary>The names of the sources, also of those that are not written as a source is.</summary>
    public IReadOnlyList<string> SourceIds => [.. SourceEntries.Select(entry => entry.Id?.Text).OfType<string>()];

    public IReadOnlyList<Source> Sources => [.. SourceEntries.Select(entry => entry.Source).OfType<Source>()];

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
        return draft with
        {
            HasHead = true,
            Title = fields.Text("title", needed: true),
            Minutes = fields.Whole("minutes", 1, 600, needed: !isTranslation),
            MinutesPlace = fields.PlaceOf("minutes"),
            Procedures = fields.Ids("procedures"),
            ProceduresPlace = fields.PlaceOf("procedures"),
            SourceEntries = [.. fields.Items("sources").Select(node => SourceDraft.Read(node, problems, isTranslation)).OfType<SourceDraft>()],
            SourcesPlace = fields.PlaceOf("sources"),
        };
    }
}

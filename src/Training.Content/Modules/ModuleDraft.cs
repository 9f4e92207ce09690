using Training.Content.Yaml;

namespace Training.Content.Modules;

/// <summary>A module as its folder has it, sound or not.</summary>
internal sealed class ModuleDraft(string id)
{
    public string Id => id;

    public LessonDraft? Lesson { get; set; }

    public List<LessonDraft> Translations { get; } = [];

    public List<ContentFile> Pictures { get; } = [];

    public List<ProblemList> PictureProblems { get; } = [];

    /// <summary>The words of the pictures in other languages.</summary>
    public List<PictureLabelsDraft> Labels { get; } = [];

    /// <summary>All lessons, that of the default language first.</summary>
    public IEnumerable<LessonDraft> Lessons => Lesson is null ? Translations : [Lesson, .. Translations];

    public IEnumerable<ProblemList> Problems => [.. Lessons.Select(lesson => lesson.Problems), .. PictureProblems, .. Labels.Select(labels => labels.Problems)];

    public bool HasPicture(string path) => Pictures.Exists(picture => picture.Path == $"modules/{Id}/{path}");

    public void AddPicture(ContentFile file)
    {
        var problems = new ProblemList(file.Path);
        SvgPicture.Check(file, problems);
        Pictures.Add(file);
        PictureProblems.Add(problems);
    }

    /// <summary>The sources of a translation: the lesson's, with the words that are translated.</summary>
    public IReadOnlyList<Source> SourcesOf(LessonDraft translation) =>
        Lesson is null ? translation.Sources : SourceDraft.In(Lesson.Sources, translation.SourceEntries, translation.Language);

    /// <summary>The module; only where no error stands.</summary>
    public Module ToModule() => new(new(id), Lesson!.Lesson)
    {
        Minutes = Lesson.Minutes!.Value,
        Procedures = [.. Lesson.Procedures.Select(procedure => new Training.Sequencing.Procedures.ProcedureId(procedure.Text))],
        Translations = [.. Translations.Select(translation => translation.Lesson with { Sources = SourcesOf(translation) })],
        Pictures = Pictures,
        Labels = [.. Labels.Select(labels => labels.ToPictureLabels())],
    };
}

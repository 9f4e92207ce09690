using Training.Sequencing.Procedures;

namespace Training.Content.Modules;

/// <summary>The name of a module: its folder's name, a number and a slug such as <c>02-shut-down-and-isolate</c>.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct ModuleId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>Something to learn in one sitting: a lesson in one or more languages, its pictures and the procedures that it teaches.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Lesson">The lesson in the default language.</param>
public sealed record Module(ModuleId Id, Lesson Lesson)
{
    /// <summary>What the module is called in the default language.</summary>
    public string Title => Lesson.Title;

    /// <summary>How many minutes it takes to read and work through.</summary>
    public required int Minutes { get; init; }

    /// <summary>The procedures that it teaches.</summary>
    public IReadOnlyList<ProcedureId> Procedures { get; init; } = [];

    /// <summary>The lesson in other languages.</summary>
    public IReadOnlyList<Lesson> Translations { get; init; } = [];

    /// <summary>The pictures, as SVG files.</summary>
    public IReadOnlyList<ContentFile> Pictures { get; init; } = [];

    /// <summary>The words of the pictures in other languages.</summary>
    public IReadOnlyList<PictureLabels> Labels { get; init; } = [];

    /// <summary>The lesson in a language; where there is none, the lesson in the default language.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public Lesson In(string language) =>
        Translations.FirstOrDefault(lesson => string.Equals(lesson.Language, language, StringComparison.OrdinalIgnoreCase)) ?? Lesson;

    /// <summary>The picture of that path below the module's folder, such as <c>pictures/isolator.svg</c>, or null.</summary>
    /// <param name="path">The path.</param>
    public ContentFile? FindPicture(string path) =>
        Pictures.FirstOrDefault(picture => picture.Path == $"modules/{Id}/{path}");

    /// <summary>The picture of that path with its labels in a language, as far as they are translated, or null.</summary>
    /// <param name="path">The path.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public ContentFile? FindPicture(string path, string language) =>
        FindPicture(path) is not { } picture ? null
            : LabelsIn(language) is { } labels ? picture with { Text = PictureText.With(picture.Text, labels) }
            : picture;

    /// <summary>The words of the pictures in a language; null where there are none.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public PictureLabels? LabelsIn(string language) =>
        Labels.FirstOrDefault(labels => string.Equals(labels.Language, language, StringComparison.OrdinalIgnoreCase));
}

/// <summary>The text of a module in one language.</summary>
/// <param name="Language">The language, such as <c>en</c>.</param>
/// <param name="Title">What the module is called.</param>
/// <param name="File">The file that it was read from.</param>
public sealed record Lesson(string Language, string Title, ContentFile File)
{
    /// <summary>Where its numbers come from.</summary>
    public IReadOnlyList<Source> Sources { get; init; } = [];
}

/// <summary>Where a number or a rule of a lesson comes from.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Where">An address, a paragraph or a page.</param>
/// <param name="Kind">How far it can be checked.</param>
public sealed record Source(string Name, string Where, SourceKind Kind)
{
    /// <summary>The name by which the text marks what comes from it, as in <c>[^ninety]</c>; null where nothing is marked.</summary>
    public string? Id { get; init; }

    /// <summary>The language that <see cref="Name"/> is in: the default language where it is not translated.</summary>
    public string Language { get; init; } = ContentLibrary.DefaultLanguage;

    /// <summary>The language that <see cref="Where"/> is in.</summary>
    public string WhereLanguage { get; init; } = ContentLibrary.DefaultLanguage;

    /// <summary>Whether <see cref="Where"/> is an address that can be followed.</summary>
    public bool IsAddress => Where.StartsWith("https://", StringComparison.Ordinal);

    /// <summary>
    /// Whether <see cref="Where"/> repeats what its kind says already, as the file of the default language words it. It
    /// is not shown, and needs no translation.
    /// </summary>
    public bool RepeatsItsKind => Kind switch
    {
        SourceKind.Practice => Where == "common practice, no published source",
        SourceKind.Memory => Where == "from memory",
        _ => false,
    };
}

/// <summary>How far a source can be checked.</summary>
public enum SourceKind
{
    /// <summary>It is published and can be looked up.</summary>
    Published,

    /// <summary>Common practice of the trade, no published source.</summary>
    Practice,

    /// <summary>From the author's memory.</summary>
    Memory,
}

using Training.Content.Modules;

namespace Training.Content.Rendering;

/// <summary>What the renderers of one text need to know.</summary>
/// <param name="Library">Where lessons and procedures are found.</param>
/// <param name="Drawings">Where drawings and addresses come from.</param>
/// <param name="Module">The module that the text belongs to; null for a situation.</param>
/// <param name="Language">The language that the text is in.</param>
/// <param name="HeadingIds">The fragments that lead to a heading of the text.</param>
/// <param name="Sources">The sources of the text, in the order of the list at its end.</param>
internal sealed record RenderContext(
    ContentLibrary Library,
    ILessonDrawings Drawings,
    Module? Module,
    string Language,
    IReadOnlySet<string> HeadingIds,
    IReadOnlyList<Source> Sources)
{
    public LessonWords Words { get; } = LessonWords.In(Language);

    /// <summary>The address that a link of the text is shown with; null where it leads nowhere that is allowed.</summary>
    public string? AddressOf(string? address) => LinkTarget.Of(address, Module?.Id) switch
    {
        LinkTarget.Outside outside => outside.Address,
        LinkTarget.Fragment heading when HeadingIds.Contains(heading.Id) => "#" + heading.Id,
        LinkTarget.LessonOf lesson when Library.FindModule(lesson.Module) is not null =>
            Drawings.LessonAddress(lesson.Module) + (lesson.Heading is { } id ? "#" + id : ""),
        LinkTarget.Picture => PictureOf(address)?.Address,
        LinkTarget.GlossaryTerm term when Library.FindTerm(term.Id, Language) is not null => Drawings.GlossaryAddress(term.Id),
        _ => null,
    };

    /// <summary>The picture of that address and where it is fetched; null where there is none.</summary>
    public (ContentFile File, string Address)? PictureOf(string? address) =>
        LinkTarget.Of(address, Module?.Id) is LinkTarget.Picture picture
        && Library.FindModule(picture.Module) is { } owner && owner.FindPicture(picture.Path) is { } file
            ? (file, Drawings.PictureAddress(picture.Module, picture.Path, owner.LabelsIn(Language)?.Language))
            : null;
}

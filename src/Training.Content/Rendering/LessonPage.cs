namespace Training.Content.Rendering;

/// <summary>A lesson as it is shown.</summary>
/// <param name="Title">What the module is called, as plain text.</param>
/// <param name="Language">The language that the lesson is really in: the default language where there is no translation.</param>
/// <param name="Html">The lesson without its title, as HTML that is safe to show.</param>
/// <param name="Sections">Its headings, in order, for a list of contents.</param>
public sealed record LessonPage(string Title, string Language, string Html, IReadOnlyList<LessonSection> Sections);

/// <summary>A heading of a lesson.</summary>
/// <param name="Id">The fragment that leads to it, the same in every language.</param>
/// <param name="Heading">Its words, as plain text.</param>
/// <param name="Level">2 for a section, 3 for a sub-section.</param>
public sealed record LessonSection(string Id, string Heading, int Level);

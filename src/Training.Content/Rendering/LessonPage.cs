using System.Globalization;

namespace Training.Content.Rendering;

/// <summary>A lesson as it is shown.</summary>
/// <param name="Title">What the module is called, as plain text.</param>
/// <param name="Language">The language that the lesson is really in: the default language where there is no translation.</param>
/// <param name="Parts">The lesson without its title, in order: text, and the questions between it.</param>
/// <param name="Sections">Its headings, in order, for a list of contents.</param>
public sealed record LessonPage(string Title, string Language, IReadOnlyList<LessonPart> Parts, IReadOnlyList<LessonSection> Sections)
{
    /// <summary>The text without the questions, as HTML that is safe to show.</summary>
    public string Html => string.Concat(Parts.OfType<LessonPart.Text>().Select(part => part.Html));

    // An underscore never stands in the fragment of a heading, so these are nobody else's.

    /// <summary>The fragment that leads to a source in the list at the end of the lesson.</summary>
    /// <param name="place">The source's place in the list, from 1.</param>
    public static string SourceFragment(int place) => string.Create(CultureInfo.InvariantCulture, $"source_{place}");

    /// <summary>The fragment that leads to a check question.</summary>
    /// <param name="number">The question's number in the lesson, from 1.</param>
    public static string CheckFragment(int number) => string.Create(CultureInfo.InvariantCulture, $"check_{number}");
}

/// <summary>A heading of a lesson.</summary>
/// <param name="Id">The fragment that leads to it, the same in every language.</param>
/// <param name="Heading">Its words, as plain text.</param>
/// <param name="Level">2 for a section, 3 for a sub-section.</param>
public sealed record LessonSection(string Id, string Heading, int Level);

/// <summary>A piece of a lesson.</summary>
public abstract record LessonPart
{
    private LessonPart()
    {
    }

    /// <summary>Text, pictures and blocks.</summary>
    /// <param name="Html">As HTML that is safe to show.</param>
    public sealed record Text(string Html) : LessonPart;

    /// <summary>A question that the reader answers for themselves. Which answer is right is not in it.</summary>
    /// <param name="Number">Its number in the lesson, from 1; the same in every language.</param>
    /// <param name="QuestionHtml">The question, as HTML that is safe to show.</param>
    /// <param name="AnswersHtml">The answers, in order, as HTML that is safe to show within a label or a button.</param>
    public sealed record Check(int Number, string QuestionHtml, IReadOnlyList<string> AnswersHtml) : LessonPart;
}

/// <summary>What somebody is told who has answered a check question.</summary>
/// <param name="IsRight">Whether the answer is the right one.</param>
/// <param name="Html">Why, as HTML that is safe to show.</param>
public sealed record CheckReply(bool IsRight, string Html);

using Training.Content.Modules;
using Training.Content.Rendering;

namespace Training.Web.Features.Shared;

/// <summary>A check question as it is shown.</summary>
/// <param name="Module">The module.</param>
/// <param name="Language">The language that the question is in.</param>
/// <param name="Check">The question.</param>
/// <param name="Given">The answer that was just given; null where none was.</param>
public sealed record CheckPage(ModuleId Module, string Language, LessonPart.Check Check, GivenAnswer? Given)
{
    /// <summary>The fragment that leads to it.</summary>
    public string Fragment => LessonPage.CheckFragment(Check.Number);

    /// <summary>The English sentence that heads a reply.</summary>
    /// <param name="isRight">Whether the answer is right.</param>
    [return: System.ComponentModel.Localizable(true)]
    public static string Heading(bool isRight) => isRight ? "That is right." : "Not this one. Try again.";
}

/// <summary>An answer to a check question, and what is said to it.</summary>
/// <param name="Check">The question's number.</param>
/// <param name="Answer">The answer's place, from 1.</param>
/// <param name="Reply">What is said to it.</param>
public sealed record GivenAnswer(int Check, int Answer, CheckReply Reply);

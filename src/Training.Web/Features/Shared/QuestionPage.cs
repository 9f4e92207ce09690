using Training.Content.Rendering;
using Training.Records.Asking;

namespace Training.Web.Features.Shared;

/// <summary>A question as it is put: its task and its situation.</summary>
/// <param name="Question">The question.</param>
/// <param name="Situation">The situation as HTML that is safe to show.</param>
public sealed record QuestionPage(QuestionView Question, string Situation)
{
    /// <summary>The language of the situation and of the steps: that of the scenario, where it is not translated.</summary>
    public required string Language { get; init; }

    /// <summary>Whether the reader gets another language than the one that they read.</summary>
    public bool FellBack { get; private init; }

    /// <summary>Makes the page of a question.</summary>
    /// <param name="question">The question.</param>
    /// <param name="renderer">Makes HTML of its situation.</param>
    /// <param name="language">The reader's language.</param>
    public static QuestionPage Of(QuestionView question, LessonRenderer renderer, string language)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(renderer);
        var written = question.Situation.In(language).Language;
        return new(question, renderer.RenderSituation(question.Situation, language))
        {
            Language = written,
            FellBack = !string.Equals(written, language, StringComparison.OrdinalIgnoreCase),
        };
    }
}

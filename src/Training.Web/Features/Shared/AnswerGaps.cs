using Training.Records.Asking;
using Training.Sequencing;

namespace Training.Web.Features.Shared;

/// <summary>What an answer that has begun still lacks: a paper takes it as it is, and says so before it is handed in.</summary>
public static class AnswerGaps
{
    /// <summary>What is lacking, a sentence each; none where the answer is whole.</summary>
    /// <param name="question">The question.</param>
    /// <param name="savedJson">The answer as it is saved.</param>
    public static IReadOnlyList<Refusal> Of(QuestionView question, string savedJson)
    {
        ArgumentNullException.ThrowIfNull(question);
        var form = AnswerForm.OfSaved(savedJson);
        if (question.Reading is not { } reading)
            return [.. AnswerForm.WrongTimes(form.Placed(), AnswerSheet.OfferedBy(question), areNeeded: true).Select(wrong => wrong.Why)];
        var gaps = new List<Refusal>();
        if (string.IsNullOrEmpty(form.Value)) gaps.Add(new("No value is written."));
        if (reading.Decisions.Count > 0 && form.Decision is null) gaps.Add(new("No decision is chosen."));
        return gaps;
    }
}

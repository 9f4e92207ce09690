using System.Globalization;
using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Yaml;

namespace Training.Content.Rendering;

/// <summary>
/// A question that a reader answers for themselves, as its block has it: the question, then a list of answers, each with
/// the reply to whoever gives it as the one entry of a list below it.
/// </summary>
/// <param name="Question">The question.</param>
/// <param name="Answers">The answers, in order.</param>
/// <param name="Right">The place of the right answer, from 1.</param>
internal sealed record CheckQuestion(IReadOnlyList<Block> Question, IReadOnlyList<CheckAnswer> Answers, int Right)
{
    private const int FewestAnswers = 2;
    private const int MostAnswers = 4;

    /// <summary>Reads a block; null, and reported, where it is not written as a check is.</summary>
    public static CheckQuestion? Read(CustomContainer container, ProblemList problems)
    {
        var place = LessonText.PlaceOf(container);
        if (container.Parent is not MarkdownDocument)
        {
            problems.Hold(place, "A check stands by itself: take it out of the list, quote or block that it is in.");
            return null;
        }

        if (container.LastChild is not ListBlock { IsOrdered: false } list || container.Count < 2)
        {
            problems.Hold(place, "A check is a question and, behind it, a list of answers (\"- \") with which it ends.");
            return null;
        }

        Block[] question = [.. container.Take(container.Count - 1)];
        foreach (var part in question.Where(part => part is not ParagraphBlock))
            problems.Hold(LessonText.PlaceOf(part), "The question of a check is told in sentences alone: take this out of it.");
        if (list.Count is < FewestAnswers or > MostAnswers)
            problems.Hold(LessonText.PlaceOf(list), $"A check has {FewestAnswers} to {MostAnswers} answers; here are {list.Count}.");
        CheckAnswer?[] answers = [.. list.OfType<ListItemBlock>().Select(item => CheckAnswer.Read(item, problems))];
        var right = RightOf(container, answers.Length, problems);
        return right is null || answers.Contains(null) || question.Any(part => part is not ParagraphBlock)
            ? null
            : new(question, [.. answers.OfType<CheckAnswer>()], right.Value);
    }

    private static int? RightOf(CustomContainer container, int answers, ProblemList problems)
    {
        var place = LessonText.PlaceOf(container);
        if (OwnBlocks.Arguments(container) is not [var word] || !int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var right))
        {
            problems.Hold(place, "Say behind \"check\" which answer is right, counted from 1: \"::: check 2\".");
            return null;
        }

        if (right >= 1 && right <= answers) return right;
        problems.Hold(place, $"There is no answer {word}: this check has {answers}.");
        return null;
    }
}

/// <summary>One answer to a check.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Reply">What whoever gives it is told.</param>
internal sealed record CheckAnswer(ParagraphBlock Text, ListItemBlock Reply)
{
    public static CheckAnswer? Read(ListItemBlock item, ProblemList problems)
    {
        if (item is not [ParagraphBlock text, ListBlock { Count: 1 } replies])
        {
            problems.Hold(LessonText.PlaceOf(item), "An answer is one paragraph and, set in below it, one entry (\"  - \") that tells whoever picks it why it is right or wrong.");
            return null;
        }

        if (text.Inline?.Descendants().FirstOrDefault(part => part is LinkInline or AutolinkInline or SourceMark) is { } link)
            problems.Hold(LessonText.PlaceOf(link), "An answer has no links, pictures or marks: put them into the reply.");
        var reply = (ListItemBlock)replies[0];
        if (reply.Count > 0) return new(text, reply);
        problems.Hold(LessonText.PlaceOf(reply), "The reply is empty: say why the answer is right or wrong, and what happens.");
        return null;
    }
}

using Training.Sequencing.Answers;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Questions;

/// <summary>A question with options, together with what is right: it stays where answers are judged.</summary>
public sealed class ChoiceQuestion
{
    private readonly Weighed[] options;
    private readonly IReadOnlyList<Finding> taught;

    internal ChoiceQuestion(ChoicePrompt prompt, Weighed[] options, IReadOnlyList<Finding> taught) =>
        (Prompt, this.options, this.taught) = (prompt, options, taught);

    /// <summary>What may be shown before it is answered.</summary>
    public ChoicePrompt Prompt { get; }

    /// <summary>The options that are right, by their ids; to be shown only once an answer is in.</summary>
    public IReadOnlyList<string> Right => [.. options.Where(option => option.IsRight).Select(option => option.Id)];

    /// <summary>What an unanswered question is worth: nothing; and who names no fault has overlooked the one that is there.</summary>
    public Judgement Unanswered => new(0m)
    {
        Safe = Prompt.Kind != ChoiceKind.FirstFault || taught.All(finding => finding.Stakes.IsSafe),
        Right = Right,
        Findings = taught,
        Replayed = Prompt.Kind == ChoiceKind.Wait ? null : options[0].Replayed,
    };

    /// <summary>Why an answer cannot be judged, or null. That nothing is chosen yet is no reason here.</summary>
    /// <param name="chosen">The ids of the options that were chosen.</param>
    public Refusal? WhyNot(IReadOnlyCollection<string> chosen)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        if (chosen.Count > 1 && !Prompt.TakesSeveral) return new("Choose just one option.");
        if (chosen.Distinct(StringComparer.Ordinal).Count() < chosen.Count) return new("An option is chosen twice.");
        return chosen.FirstOrDefault(id => !options.Any(option => option.Id == id)) is { } foreign
            ? new($"This question has no option “{foreign}”.")
            : null;
    }

    /// <summary>Judges an answer, or refuses it with a sentence.</summary>
    /// <param name="chosen">The ids of the options that were chosen.</param>
    public Outcome<Judgement, Refusal> Judge(IReadOnlyCollection<string> chosen)
    {
        if (WhyNot(chosen) is { } reason) return reason;
        if (chosen.Count == 0) return new Refusal("Choose an option.");
        Weighed[] picked = [.. options.Where(option => chosen.Contains(option.Id))];
        var wrong = picked.Where(option => !option.IsRight).ToArray();
        return new Judgement(Score(picked, wrong.Length))
        {
            Safe = wrong.All(option => option.Risks.All(finding => finding.Stakes.IsSafe)),
            Right = Right,
            Findings = [.. taught.Concat(picked.Where(option => !option.IsRight || option.TeachesAlways)
                .SelectMany(option => option.Teaches)).Distinct()],
            Replayed = (wrong.Length > 0 ? wrong[0] : picked[0]).Replayed,
        };
    }

    /// <summary>Of the options that are right the share that was chosen, less one share for each wrong one.</summary>
    private decimal Score(Weighed[] picked, int wrong)
    {
        var wanted = Prompt.TakesSeveral ? options.Count(option => option.IsRight) : 1;
        return Math.Round(100m * Math.Max(0, picked.Length - wrong - wrong) / wanted, 2, MidpointRounding.ToEven);
    }
}

/// <summary>What an answer to a question with options is worth.</summary>
/// <param name="Score">From 0 to 100, two decimals; 100 just where the answer is right.</param>
public sealed record Judgement(decimal Score)
{
    /// <summary>Whether it is right.</summary>
    public bool IsRight => Score == 100m;

    /// <summary>
    /// Whether whoever works by this answer hurts nobody seriously and does nothing critical: the same measure as of a
    /// verdict.
    /// </summary>
    public required bool Safe { get; init; }

    /// <summary>The options that are right, by their ids.</summary>
    public required IReadOnlyList<string> Right { get; init; }

    /// <summary>The findings that teach: what is wrong in what was shown or chosen, and why.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The order of work that shows what happens, to be graded and replayed; null where there is none.</summary>
    public Answer? Replayed { get; init; }
}

/// <summary>An option and what is known of it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="IsRight">Whether it is right.</param>
internal sealed record Weighed(string Id, bool IsRight)
{
    /// <summary>What comes of it when somebody works by it.</summary>
    public IReadOnlyList<Finding> Risks { get; init; } = [];

    /// <summary>What is told to whoever chose it.</summary>
    public IReadOnlyList<Finding> Teaches { get; init; } = [];

    /// <summary>Whether that is told though the option is right.</summary>
    public bool TeachesAlways { get; init; }

    /// <summary>The order that shows what happens when somebody works by it.</summary>
    public Answer? Replayed { get; init; }
}

using Training.Records.Asking;

namespace Training.Web.Features.Shared;

/// <summary>What every answer sheet has, whatever is asked on it: it works by posting; a script saves on the way.</summary>
public abstract record Sheet
{
    /// <summary>Where the sheet is posted as it stands.</summary>
    public required string ChangeAddress { get; init; }

    /// <summary>Where a script saves the answer while it is being made; null where nothing is kept until it is handed in.</summary>
    public string? SaveAddress { get; init; }

    /// <summary>The number of the last save that the server has: a later one wins, an older one never does.</summary>
    public long SaveNumber { get; init; }

    /// <summary>
    /// The name under which a script keeps an answer that nobody saves on this device until it is handed in; null where
    /// the server keeps it.
    /// </summary>
    public string? KeptAs { get; init; }

    /// <summary>Whether the server holds another answer, saved from another page, than the one on the sheet.</summary>
    public bool IsAnotherHeld { get; init; }

    /// <summary>What else the form carries, such as the seed and the key of this hand-in.</summary>
    public IReadOnlyDictionary<string, string> Carried { get; init; } = new Dictionary<string, string>();

    /// <summary>What is wrong with what was posted, if anything.</summary>
    public string? Wrong { get; init; }

    /// <summary>The buttons that end the sheet, each with where it posts.</summary>
    public IReadOnlyList<SheetAct> Acts { get; init; } = [];

    /// <summary>The sheet with what is wrong with it: where it is a time, at the field of that time as well.</summary>
    /// <param name="wrong">The sentence.</param>
    /// <param name="times">The times that cannot be taken.</param>
    public Sheet Refused(string wrong, IReadOnlyList<WrongTime> times) =>
        this is AnswerSheet sheet ? sheet with { Wrong = wrong, WrongTimes = times } : this with { Wrong = wrong };

    /// <summary>The sheet of a question, filled in as it was posted or saved.</summary>
    /// <param name="question">The question.</param>
    /// <param name="form">What was posted or saved.</param>
    /// <param name="changeAddress">Where the sheet is posted as it stands.</param>
    public static Sheet For(QuestionView question, AnswerForm form, string changeAddress)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(form);
        if (question.Reading is { } reading)
            return new ReadingSheet(question, reading, form.Value ?? "", form.Decision) { ChangeAddress = changeAddress };
        return question.Choice is { } choice
            ? new ChoiceSheet(question, choice, [.. (form.Option ?? []).Where(id => choice.Options.Any(option => option.Id == id))])
            {
                ChangeAddress = changeAddress,
            }
            : AnswerSheet.Of(question, form.Placed(), changeAddress);
    }
}

/// <summary>A sheet of options.</summary>
/// <param name="Question">The question.</param>
/// <param name="Choice">Its options.</param>
/// <param name="Chosen">The ids of those that are chosen.</param>
public sealed record ChoiceSheet(QuestionView Question, ChoiceView Choice, IReadOnlyList<string> Chosen) : Sheet;

/// <summary>A sheet for a reading.</summary>
/// <param name="Question">The question.</param>
/// <param name="Reading">What is read.</param>
/// <param name="Value">The value as it was typed.</param>
/// <param name="Decision">The number of the decision; null where none is chosen.</param>
public sealed record ReadingSheet(QuestionView Question, ReadingView Reading, string Value, string? Decision) : Sheet;

/// <summary>A button at the end of an answer sheet.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Address">Where it posts.</param>
/// <param name="IsMain">Whether it is the one that most people want.</param>
public sealed record SheetAct(string Text, string Address, bool IsMain = false);

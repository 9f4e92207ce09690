using Training.Records.Asking;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>
/// What the answer sheet shows: the steps on offer, those that a colleague has done, and the order so far. It works by
/// posting at every tap; a script makes the same taps without a journey to the server.
/// </summary>
/// <param name="Offered">What may be placed, in the drawn order; nothing tells a step from a decoy.</param>
/// <param name="Placed">The order so far.</param>
public sealed record AnswerSheet(IReadOnlyList<OfferedStep> Offered, IReadOnlyList<PlacedStep> Placed)
{
    /// <summary>What a colleague has already done, in order.</summary>
    public IReadOnlyList<string> AlreadyDone { get; init; } = [];

    /// <summary>Where each change is posted.</summary>
    public required string ChangeAddress { get; init; }

    /// <summary>Where a script saves the order while it is being made; null where nothing is kept until it is handed in.</summary>
    public string? SaveAddress { get; init; }

    /// <summary>The number of the last save that the server has: a later one wins, an older one never does.</summary>
    public long SaveNumber { get; init; }

    /// <summary>What else the form carries, such as the seed and the key of this hand-in.</summary>
    public IReadOnlyDictionary<string, string> Carried { get; init; } = new Dictionary<string, string>();

    /// <summary>What is wrong with what was posted, if anything.</summary>
    public string? Wrong { get; init; }

    /// <summary>The buttons that end the sheet, each with where it posts.</summary>
    public IReadOnlyList<SheetAct> Acts { get; init; } = [];

    /// <summary>The sheet of a question. What is no longer on offer is not placed.</summary>
    /// <param name="question">The question.</param>
    /// <param name="placed">The order so far.</param>
    /// <param name="changeAddress">Where each change is posted.</param>
    public static AnswerSheet For(QuestionView question, IReadOnlyList<PlacedStep> placed, string changeAddress)
    {
        ArgumentNullException.ThrowIfNull(question);
        var offered = OfferedBy(question);
        return new(offered, [.. placed.Where(step => offered.Any(offer => offer.Id == step.Id))])
        {
            AlreadyDone = [.. question.Start.Select(done => done.Stated is { } stated ? $"{done.Do} ({stated})" : done.Do)],
            ChangeAddress = changeAddress,
        };
    }

    /// <summary>What a question offers.</summary>
    /// <param name="question">The question.</param>
    public static IReadOnlyList<OfferedStep> OfferedBy(QuestionView question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return [.. question.Offered.Select(offer => new OfferedStep(offer.Id, offer.Do, offer.IsWait))];
    }
}

/// <summary>A button at the end of an answer sheet.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Address">Where it posts.</param>
/// <param name="IsMain">Whether it is the one that most people want.</param>
public sealed record SheetAct(string Text, string Address, bool IsMain = false);

/// <summary>A step or decoy on offer.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Text">What it says.</param>
/// <param name="IsWait">Whether the technician states a time for it.</param>
public sealed record OfferedStep(StepId Id, string Text, bool IsWait);

/// <summary>A step in the order so far.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Seconds">The time as it was typed; null where it is no wait or nothing was typed.</param>
public sealed record PlacedStep(StepId Id, string? Seconds = null);

using Training.Records.Asking;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>
/// What the answer sheet shows: the steps on offer, those that a colleague has done, and the order so far. It works by
/// posting at every tap; a script makes the same taps without a journey to the server.
/// </summary>
/// <param name="Offered">What may be placed, in the drawn order; nothing tells a step from a decoy.</param>
/// <param name="Placed">The order so far.</param>
public sealed record AnswerSheet(IReadOnlyList<OfferedStep> Offered, IReadOnlyList<PlacedStep> Placed) : Sheet
{
    /// <summary>What a colleague has already done, in order.</summary>
    public IReadOnlyList<string> AlreadyDone { get; init; } = [];

    /// <summary>The times that cannot be taken as they stand, each told at its field.</summary>
    public IReadOnlyList<WrongTime> WrongTimes { get; init; } = [];

    /// <summary>The sheet of a question. What is no longer on offer is not placed.</summary>
    /// <param name="question">The question.</param>
    /// <param name="placed">The order so far.</param>
    /// <param name="changeAddress">Where each change is posted.</param>
    internal static AnswerSheet Of(QuestionView question, IReadOnlyList<PlacedStep> placed, string changeAddress)
    {
        ArgumentNullException.ThrowIfNull(question);
        var offered = OfferedBy(question);
        return new(offered, [.. placed.Where(step => offered.Any(offer => offer.Id == step.Id))])
        {
            AlreadyDone = [.. question.Start.Select(TextOf)],
            ChangeAddress = changeAddress,
        };
    }

    /// <summary>What was done, with its time where it was a wait.</summary>
    /// <param name="done">What was done.</param>
    public static string TextOf(DoneView done)
    {
        ArgumentNullException.ThrowIfNull(done);
        return done.Stated is { } stated ? $"{done.Do} ({stated})" : done.Do;
    }

    /// <summary>What a question offers.</summary>
    /// <param name="question">The question.</param>
    public static IReadOnlyList<OfferedStep> OfferedBy(QuestionView question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return [.. question.Offered.Select(offer => new OfferedStep(offer.Id, offer.Do, offer.IsWait))];
    }
}

/// <summary>A step or decoy on offer.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Text">What it says.</param>
/// <param name="IsWait">Whether the technician states a time for it.</param>
public sealed record OfferedStep(StepId Id, string Text, bool IsWait);

/// <summary>A step in the order so far.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Seconds">The time as it was typed; null where it is no wait or nothing was typed.</param>
public sealed record PlacedStep(StepId Id, string? Seconds = null);

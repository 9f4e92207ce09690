using NodaTime;

namespace Training.Records.Certifying;

/// <summary>What a competency record is worth on a day.</summary>
public enum RecordState
{
    /// <summary>It holds.</summary>
    Current,

    /// <summary>It holds, and renewal is open.</summary>
    Due,

    /// <summary>Its time is over.</summary>
    Expired,

    /// <summary>It does not hold until somebody reinstates it.</summary>
    Suspended,

    /// <summary>It will never hold again.</summary>
    Withdrawn,
}

/// <summary>How a competency record stands on a day. Never stored: always worked out from what happened and the day.</summary>
/// <param name="State">What it is worth.</param>
/// <param name="Since">The day that it was issued on, in the shop's time zone.</param>
/// <param name="Until">The last day on which it holds, if nothing happens to it.</param>
/// <param name="RenewFrom">The first day on which it can be renewed with the time running on.</param>
/// <param name="ConfirmBy">The last day for the next confirmation; null where none is asked for.</param>
public sealed record RecordStanding(RecordState State, LocalDate Since, LocalDate Until, LocalDate RenewFrom, LocalDate? ConfirmBy = null)
{
    /// <summary>The last day on which it holds if it is confirmed on that day and nothing else happens; null where no confirmation is asked for.</summary>
    public LocalDate? UntilIfConfirmed { get; init; }

    /// <summary>Whether it is over because nobody confirmed it in time.</summary>
    public bool HasLapsed => State == RecordState.Expired && ConfirmBy == Until;

    /// <summary>Whether the person may do the work on that day.</summary>
    public bool Holds => State is RecordState.Current or RecordState.Due;
}

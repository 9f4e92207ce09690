using System.Collections.Immutable;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;

namespace Training.Records.Ledger;

/// <summary>Everything that the log says of one record.</summary>
/// <param name="Index">The place of the entry that issued it.</param>
/// <param name="IssuedAt">When that was.</param>
/// <param name="Issued">What it says.</param>
internal sealed record RecordHistory(long Index, Instant IssuedAt, LogEvent.Issued Issued)
{
    /// <summary>What happened to it since, in order.</summary>
    public ImmutableList<(long Index, Instant At, RecordEventKind Kind)> Events { get; init; } = [];

    /// <summary>Since when a higher revision of a procedure that it was judged by is served; null while none is.</summary>
    public Instant? RevisedAt { get; init; }

    /// <summary>When the name of its person was removed; null while it is there.</summary>
    public Instant? NameRemovedAt { get; init; }

    /// <summary>The record that renewed it; null while none did.</summary>
    public RecordId? RenewedBy { get; init; }

    /// <summary>The day that it was issued on, by the calendar of its shop.</summary>
    public LocalDate IssuedOn => DayOf(IssuedAt);

    /// <summary>The day on which an instant falls in its shop.</summary>
    public LocalDate DayOf(Instant at) => at.InZone(Zone).Date;

    /// <summary>The last second of a day in its shop. A day need not begin at midnight nor have 24 hours; some are left out whole.</summary>
    public Instant LastSecondOf(LocalDate day) =>
        day.PlusDays(1).AtMidnight().InZoneLeniently(Zone).ToInstant() - Duration.FromSeconds(1);

    /// <summary>What its state is worked out from, with the text of its competency.</summary>
    public IssuedRecord With(Competency competency) => new(IssuedOn, competency.ValidFor, competency.RenewFrom)
    {
        ConfirmEvery = competency.ConfirmEvery,
        Revised = competency.OnNewRevision is RevisionRule.Renew rule && RevisedAt is { } at ? (DayOf(at), rule.Within) : null,
        Events = [.. Events.Select(entry => (DayOf(entry.At), entry.Kind))],
    };

    private DateTimeZone Zone => DateTimeZoneProviders.Tzdb[Issued.Zone];
}

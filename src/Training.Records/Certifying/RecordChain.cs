using NodaTime;
using Period = Training.Content.Competencies.Period;

namespace Training.Records.Certifying;

/// <summary>A record of a person and competency, as far as its state depends on it. All days are those of the shop's calendar.</summary>
/// <param name="IssuedOn">The day that it was issued on.</param>
/// <param name="ValidFor">How long it holds.</param>
/// <param name="RenewFrom">How long before its end it may be renewed.</param>
public sealed record IssuedRecord(LocalDate IssuedOn, Period ValidFor, Period RenewFrom)
{
    /// <summary>How often it must be confirmed; null where it need not be.</summary>
    public Period? ConfirmEvery { get; init; }

    /// <summary>The day on which a procedure that it was judged by was revised, and how long it holds from then; null where that does not matter.</summary>
    public (LocalDate On, Period Within)? Revised { get; init; }

    /// <summary>What happened to it, in order.</summary>
    public IReadOnlyList<(LocalDate On, RecordEventKind Kind)> Events { get; init; } = [];
}

/// <summary>
/// The records of one person for one competency, oldest first, and what each is worth on any day. Pure: what is worked
/// out for a day uses only what had happened by the end of that day.
/// <para>
/// A record holds up to and including the day that lies <c>valid-for</c> after the day of issue. One that is issued
/// while the record before it is due runs on from that one's end. Months are counted from the first day of such a chain,
/// so that a short month in between takes nothing away for good: from 31 August, six months are 28 February, and six more
/// 31 August.
/// </para>
/// <para>
/// So it is with confirmations: the deadlines are the day of issue and so many times the period after it, whenever somebody
/// confirms. What is confirmed is the period that the day lies in.
/// </para>
/// </summary>
public sealed class RecordChain
{
    private readonly IReadOnlyList<IssuedRecord> records;
    private readonly Term[] terms;

    /// <summary>Takes the records, oldest first.</summary>
    /// <param name="records">The records.</param>
    public RecordChain(IReadOnlyList<IssuedRecord> records)
    {
        this.records = records ?? throw new ArgumentNullException(nameof(records));
        terms = new Term[records.Count];
        for (var index = 0; index < terms.Length; index++) terms[index] = TermOf(index);
    }

    /// <summary>How a record stands at the end of a day; null on a day before it was issued.</summary>
    /// <param name="index">Which record, from 0.</param>
    /// <param name="date">The day.</param>
    public RecordStanding? StateOn(int index, LocalDate date)
    {
        var record = records[index];
        if (date < record.IssuedOn) return null;
        var happened = record.Events.Where(entry => entry.On <= date).ToList();
        var until = terms[index].Until;
        var renewFrom = until.PlusMonths(-record.RenewFrom.Months).PlusDays(-record.RenewFrom.Days);
        LocalDate? confirmBy = null, ifConfirmed = null;
        if (record.ConfirmEvery is { } every)
        {
            var confirmed = happened.Where(entry => entry.Kind == RecordEventKind.Confirmed).Select(entry => entry.On).ToList();
            confirmBy = DeadlineAfter(record.IssuedOn, every, confirmed);
            ifConfirmed = LocalDate.Min(until, DeadlineAfter(record.IssuedOn, every, [.. confirmed, date]));
            until = LocalDate.Min(until, confirmBy.Value);
        }

        if (record.Revised is { } revised && revised.On <= date)
        {
            var last = After(revised.On, revised.Within);
            until = LocalDate.Min(until, last);
            ifConfirmed = ifConfirmed is { } confirmed ? LocalDate.Min(confirmed, last) : null;
            renewFrom = LocalDate.Min(renewFrom, revised.On);
        }

        renewFrom = LocalDate.Max(renewFrom, record.IssuedOn);
        var suspension = happened.LastOrDefault(entry => entry.Kind is RecordEventKind.Suspended or RecordEventKind.Reinstated).Kind;
        var state = happened.Any(entry => entry.Kind == RecordEventKind.Withdrawn) ? RecordState.Withdrawn
            : date > until ? RecordState.Expired
            : suspension == RecordEventKind.Suspended ? RecordState.Suspended
            : date >= renewFrom ? RecordState.Due
            : RecordState.Current;
        return new(state, record.IssuedOn, until, renewFrom, confirmBy) { UntilIfConfirmed = ifConfirmed };
    }

    /// <summary>
    /// The last day of a record if it is confirmed in time, as it is known on a day, and the first day on which a renewal
    /// runs on from there; one that is passed earlier counts from the day of passing.
    /// </summary>
    /// <param name="index">Which record, from 0.</param>
    /// <param name="date">The day.</param>
    public (LocalDate Ends, LocalDate RunsOnFrom) TermOn(int index, LocalDate date)
    {
        var record = records[index];
        var ends = terms[index].Until;
        var opens = ends.PlusMonths(-record.RenewFrom.Months).PlusDays(-record.RenewFrom.Days);
        return (record.Revised is { } revised && revised.On <= date ? LocalDate.Min(ends, After(revised.On, revised.Within)) : ends, opens);
    }

    /// <summary>The record that counts on a day: the newest that was issued by then; null before there was one.</summary>
    /// <param name="date">The day.</param>
    public int? NewestOn(LocalDate date)
    {
        for (var index = records.Count - 1; index >= 0; index--)
            if (records[index].IssuedOn <= date) return index;
        return null;
    }

    private Term TermOf(int index)
    {
        var record = records[index];
        if (index > 0)
        {
            var before = terms[index - 1];
            var opens = before.Until.PlusMonths(-records[index - 1].RenewFrom.Months).PlusDays(-records[index - 1].RenewFrom.Days);
            // A record that a new revision has shortened is renewed from the day of passing, not from an end that it no longer reaches.
            if (StateOn(index - 1, record.IssuedOn) is { Holds: true } && record.IssuedOn >= opens)
                return before with { Months = before.Months + record.ValidFor.Months, Days = before.Days + record.ValidFor.Days };
        }

        return new(record.IssuedOn, record.ValidFor.Months, record.ValidFor.Days);
    }

    /// <summary>The deadline of the first period that is not confirmed yet. One that comes too late revives nothing; a second in one period changes nothing.</summary>
    private static LocalDate DeadlineAfter(LocalDate issuedOn, Period every, IEnumerable<LocalDate> confirmations)
    {
        // The day of issue belongs to the first period.
        var (period, before) = (1, LocalDate.MinIsoValue);
        foreach (var on in confirmations)
            if (on > before && on <= Deadline(period)) before = Deadline(period++);
        return Deadline(period);

        LocalDate Deadline(int number) => issuedOn.PlusMonths(number * every.Months).PlusDays(number * every.Days);
    }

    private static LocalDate After(LocalDate date, Period period) => date.PlusMonths(period.Months).PlusDays(period.Days);

    /// <summary>A time that is counted from the first day of a chain.</summary>
    private readonly record struct Term(LocalDate Anchor, int Months, int Days)
    {
        public LocalDate Until => Anchor.PlusMonths(Months).PlusDays(Days);
    }
}

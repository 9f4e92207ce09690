using Training.Sequencing.Answers;
using Training.Sequencing.Layouts;

namespace Training.Sequencing.Replaying;

/// <summary>
/// What happens when the entries are done one after another: the clock and the facts. A wait lasts as long as was
/// stated, every other step what it takes, and what is never right takes no time and sets nothing. In an observed run
/// the clock is the real one, and the run's own zero is the moment at which the start was done.
/// </summary>
internal sealed class Replay
{
    // Only real times leave a pause between two entries.
    private readonly decimal[]? startsAt;
    private readonly decimal[] endsAt;
    private readonly int[][] valuesBefore;

    private Replay(int startCount, int count, bool isObserved)
    {
        StartCount = startCount;
        startsAt = isObserved ? new decimal[startCount + count] : null;
        endsAt = new decimal[startCount + count];
        valuesBefore = new int[startCount + count + 1][];
    }

    /// <summary>How many entries were done before the answer.</summary>
    public int StartCount { get; }

    /// <summary>When the start was done.</summary>
    public decimal StartDoneAt => StartCount == 0 ? 0 : endsAt[StartCount - 1];

    public static Replay Of(Layout layout, Reading reading)
    {
        var replay = new Replay(reading.Start.Length, reading.Entries.Length, reading.IsObserved);
        var clock = 0m;
        var values = new int[layout.Facts.Count];
        for (var e = 0; e < reading.Start.Length; e++)
            replay.Do(layout, e, reading.Start[e], reading.Answer.Start[e], ref clock, ref values);
        var zero = clock;
        for (var e = 0; e < reading.Entries.Length; e++)
        {
            var position = reading.Start.Length + e;
            replay.Do(layout, position, reading.Entries[e], reading.Answer.Entries[e], ref clock, ref values);
            if (reading.Answer.Entries[e].Observed is not { } times) continue;
            replay.startsAt![position] = zero + times.StartedAt.Seconds;
            replay.endsAt[position] = zero + times.FinishedAt.Seconds;
        }

        replay.valuesBefore[^1] = values;
        return replay;
    }

    /// <summary>When an entry begins; entries of the start have negative places, the answer's first has place 0.</summary>
    public decimal StartsAt(int place)
    {
        var position = StartCount + place;
        return startsAt is not null ? startsAt[position] : position == 0 ? 0 : endsAt[position - 1];
    }

    /// <summary>When an entry is done.</summary>
    public decimal EndsAt(int place) => endsAt[StartCount + place];

    /// <summary>The value of every fact when an entry begins; one array is shared until a value changes.</summary>
    public int[] ValuesBefore(int place) => valuesBefore[StartCount + place];

    /// <summary>The value of every fact once an entry is done.</summary>
    public int[] ValuesAfter(int place) => valuesBefore[StartCount + place + 1];

    /// <summary>How long an entry lasts by what was stated or by what its step takes.</summary>
    public static decimal LengthOf(Layout layout, int number, Entry entry) =>
        number >= layout.StepCount ? 0
        : layout.IsWait(number) ? entry.Stated?.Seconds ?? 0
        : layout.Takes[number];

    private void Do(Layout layout, int position, int number, Entry entry, ref decimal clock, ref int[] values)
    {
        valuesBefore[position] = values;
        if (startsAt is not null) startsAt[position] = clock;
        clock += LengthOf(layout, number, entry);
        endsAt[position] = clock;
        if (number >= layout.StepCount) return;
        var copied = false;
        foreach (var setting in layout.Facts.Sets[number])
        {
            if (values[setting.Fact] == setting.Value) continue;
            if (!copied) values = [.. values];
            copied = true;
            values[setting.Fact] = setting.Value;
        }
    }
}

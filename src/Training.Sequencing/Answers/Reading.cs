using Training.Sequencing.Layouts;

namespace Training.Sequencing.Answers;

/// <summary>An answer whose every entry is one that the procedure knows and carries only times that it may carry.</summary>
internal sealed class Reading
{
    /// <summary>The most entries that an answer and its start may have together.</summary>
    public const int MostEntries = 10_000;

    private Reading(Answer answer, int[] start, int[] entries, bool isObserved) =>
        (Answer, Start, Entries, IsObserved) = (answer, start, entries, isObserved);

    public Answer Answer { get; }

    /// <summary>The number of each entry of the start.</summary>
    public int[] Start { get; }

    /// <summary>The number of each entry of the answer.</summary>
    public int[] Entries { get; }

    /// <summary>Whether the entries carry real times.</summary>
    public bool IsObserved { get; }

    /// <summary>Reads an answer, or says in a sentence why it is refused whole.</summary>
    public static Reading? TryRead(Layout layout, Answer answer, out Refusal? refusal)
    {
        if (answer.Start.Count + answer.Entries.Count > MostEntries)
        {
            refusal = new(
                $"An answer has at most {MostEntries} entries; this one has {answer.Start.Count + answer.Entries.Count}.");
            return null;
        }

        var start = Numbers(layout, answer.Start, "of the start", out refusal);
        if (start is null) return null;
        var entries = Numbers(layout, answer.Entries, "of the answer", out refusal);
        if (entries is null) return null;
        refusal = TimesFault(answer);
        return refusal is null ? new(answer, start, entries, IsObservedRun(answer)) : null;
    }

    private static bool IsObservedRun(Answer answer) => answer.Entries.Count > 0 && answer.Entries[0].Observed is not null;

    private static int[]? Numbers(Layout layout, IReadOnlyList<Entry> entries, Sentence whose, out Refusal? refusal)
    {
        var numbers = entries.Count == 0 ? [] : new int[entries.Count];
        for (var e = 0; e < numbers.Length; e++)
        {
            var entry = entries[e];
            if (!layout.TryNumber(entry.Step, out numbers[e]))
            {
                refusal = At(e, whose, $"this procedure has no step “{entry.Step}”.");
                return null;
            }

            if (entry.Stated is null) continue;
            if (entry.Observed is not null)
            {
                refusal = At(e, whose, $"“{entry.Step}” carries a stated wait and real times; it may carry one of them.");
                return null;
            }

            if (TakesTime(layout, numbers[e])) continue;
            refusal = At(e, whose, $"a time is stated for “{entry.Step}”, which is not a wait.");
            return null;
        }

        refusal = null;
        return numbers;
    }

    private static bool TakesTime(Layout layout, int number) =>
        number < layout.StepCount ? layout.IsWait(number) : layout.Strangers[number - layout.StepCount].IsWait;

    private static Refusal? TimesFault(Answer answer)
    {
        for (var e = 0; e < answer.Start.Count; e++)
            if (answer.Start[e].Observed is not null)
                return At(e, "of the start", "what was done before the answer carries no real times.");
        var observed = IsObservedRun(answer);
        for (var e = 0; e < answer.Entries.Count; e++)
        {
            if (answer.Entries[e].Observed is not null != observed)
                return At(e, "of the answer", "either every entry carries real times or none does.");
            if (observed && e > 0
                && answer.Entries[e].Observed!.Value.StartedAt < answer.Entries[e - 1].Observed!.Value.StartedAt)
                return At(e, "of the answer", "it was begun before the entry above it; list the steps as they were begun.");
        }

        return null;
    }

    private static Refusal At(int entry, Sentence whose, Sentence sentence) => new($"Place {entry + 1} {whose}: {sentence}");
}

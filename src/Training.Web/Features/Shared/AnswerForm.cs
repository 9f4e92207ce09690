using System.Globalization;
using Training.Records.Asking;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>
/// An answer sheet as a browser posts it: for an order two lists side by side and the change that was asked for, for
/// options those that were chosen, for a reading a value and a decision.
/// </summary>
public sealed class AnswerForm
{
    /// <summary>More entries than any sheet can hold: a post with more is not read.</summary>
    public const int MostEntries = 200;

    /// <summary>The name of a sheet for an order.</summary>
    public const string Order = "order";

    /// <summary>The name of a sheet of options.</summary>
    public const string Options = "options";

    /// <summary>The name of a sheet for a reading.</summary>
    public const string Reading = "reading";

    /// <summary>The ids in order; null for none, for a form is bound into what is there already.</summary>
    public IReadOnlyList<string>? Step { get; init; }

    /// <summary>The times as typed, one for each id; empty where the step is no wait.</summary>
    public IReadOnlyList<string?>? Seconds { get; init; }

    /// <summary>What was tapped: <c>place:ID</c>, <c>back:ID</c>, <c>up:N</c> or <c>down:N</c>, with N from 1.</summary>
    public string? Change { get; init; }

    /// <summary>Which sheet it is: <see cref="Order"/> or null for an order, <see cref="Options"/> for options, <see cref="Reading"/> for a reading.</summary>
    public string? Sheet { get; init; }

    /// <summary>The options that were chosen; null for none.</summary>
    public IReadOnlyList<string>? Option { get; init; }

    /// <summary>The value of a reading as it was typed.</summary>
    public string? Value { get; init; }

    /// <summary>The number of the decision on a reading; null or empty where none was chosen.</summary>
    public string? Decision { get; init; }

    /// <summary>The number that the script gives a save, counted up.</summary>
    public long SaveNumber { get; init; }

    /// <summary>
    /// The numbers of the saves that the answer may have been made from, parted by commas: the one that the page showed, and
    /// those that its script sent without hearing of them.
    /// </summary>
    public string? MadeFrom { get; init; }

    /// <summary>Those numbers; just 0, nothing saved, where none is said.</summary>
    public IReadOnlyCollection<long> Bases() => [.. (MadeFrom ?? "0").Split(',').Take(MostEntries)
        .Select(number => long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : -1)];

    /// <summary>The order after the change. A change that makes no sense leaves it as it was.</summary>
    public IReadOnlyList<PlacedStep> Placed()
    {
        var placed = (Step ?? []).Take(MostEntries)
            .Select((id, index) => new PlacedStep(new(id ?? ""), Seconds?.ElementAtOrDefault(index))).ToList();
        var colon = Change?.IndexOf(':', StringComparison.Ordinal) ?? -1;
        if (colon < 0) return placed;
        var (verb, what) = (Change![..colon], Change[(colon + 1)..]);
        switch (verb)
        {
            case "place" when placed.Count < MostEntries:
                if (placed.TrueForAll(step => step.Id.Value != what)) placed.Add(new(new(what)));
                break;
            case "back":
                placed.RemoveAll(step => step.Id.Value == what);
                break;
            case "up" when Place(what, placed.Count) is var place and > 0:
                (placed[place], placed[place - 1]) = (placed[place - 1], placed[place]);
                break;
            case "down" when Place(what, placed.Count) is var place and >= 0 && place + 1 < placed.Count:
                (placed[place], placed[place + 1]) = (placed[place + 1], placed[place]);
                break;
        }

        return placed;
    }

    /// <summary>The answer in the form in which it is handed on, or a sentence where something in it cannot be read.</summary>
    /// <param name="offered">What was on offer for an order, for the words of the sentence.</param>
    public Outcome<string, Refusal> ToJson(IReadOnlyList<OfferedStep> offered)
    {
        if (Sheet == Options) return ChosenOptions.Write([.. (Option ?? []).Take(MostEntries)]);
        // A sheet that lost its fields on the way is no empty answer; an empty one says which sheet it is.
        if (Sheet == Reading ? Value is null : Sheet != Order && Step is null && string.IsNullOrEmpty(Change))
            return new Refusal("The answer did not arrive whole. Load this page again.");
        if (Sheet == Reading) return TypedReading.Write(new(Value?.Trim() ?? "", string.IsNullOrEmpty(Decision) ? null : Decision));
        var answer = Read(Placed(), offered);
        return answer.IsOk ? AnswerJson.Write(answer.Value) : answer.Fault;
    }

    /// <summary>The form of an answer that was saved. What cannot be read is an empty sheet.</summary>
    /// <param name="json">The answer; null for nothing saved.</param>
    public static AnswerForm OfSaved(string? json)
    {
        if (json is not null && ChosenOptions.Parse(json) is { IsOk: true } chosen) return new() { Option = chosen.Value };
        if (json is not null && TypedReading.Parse(json) is { IsOk: true } typed) return new() { Value = typed.Value.Value, Decision = typed.Value.Decision };
        var placed = Saved(json);
        return new() { Step = [.. placed.Select(step => step.Id.Value)], Seconds = [.. placed.Select(step => step.Seconds)] };
    }

    /// <summary>
    /// Reads the order as an answer, with a sentence where a time is no number of seconds. What the question does not
    /// offer is left to the engine to refuse.
    /// </summary>
    /// <param name="placed">The order.</param>
    /// <param name="offered">What was on offer, for the words of the sentence.</param>
    public static Outcome<Answer, Refusal> Read(IReadOnlyList<PlacedStep> placed, IReadOnlyList<OfferedStep> offered)
    {
        ArgumentNullException.ThrowIfNull(placed);
        if (WrongTimes(placed, offered, areNeeded: false) is [var wrong, ..]) return wrong.Why;
        var entries = new List<Entry>();
        foreach (var step in placed)
            entries.Add(TryReadSeconds(step.Seconds ?? "", out var seconds) ? new(step.Id) { Stated = seconds } : new(step.Id));
        return new Answer(entries);
    }

    /// <summary>The times of an order that cannot be read, and where they are needed those of waits that were left empty.</summary>
    /// <param name="placed">The order.</param>
    /// <param name="offered">What was on offer: its words, and which of it are waits.</param>
    /// <param name="areNeeded">Whether every wait needs a time; a paper keeps an order on its way without.</param>
    public static IReadOnlyList<WrongTime> WrongTimes(
        IReadOnlyList<PlacedStep> placed, IReadOnlyList<OfferedStep> offered, bool areNeeded)
    {
        ArgumentNullException.ThrowIfNull(placed);
        ArgumentNullException.ThrowIfNull(offered);
        var wrong = new List<WrongTime>();
        foreach (var (index, step) in placed.Index())
        {
            var offer = offered.FirstOrDefault(offer => offer.Id == step.Id);
            var text = offer?.Text ?? step.Id.Value;
            if (string.IsNullOrWhiteSpace(step.Seconds))
            {
                if (areNeeded && offer is { IsWait: true })
                    wrong.Add(new(step.Id, new($"“{text}”, place {index + 1}: no time is written. Write for how many seconds; 0 if you would not wait.")));
            }
            else if (!TryReadSeconds(step.Seconds, out _))
            {
                wrong.Add(new(step.Id, new($"“{text}”, place {index + 1}: write the time as a number of seconds, such as 30.")));
            }
        }

        return wrong;
    }

    /// <summary>An answer that was saved, as the sheet shows it again. What cannot be read is an empty sheet.</summary>
    /// <param name="json">The bare list of entries of the contract; null for nothing saved.</param>
    public static IReadOnlyList<PlacedStep> Saved(string? json)
    {
        if (json is null || AnswerJson.Parse(json) is not { IsOk: true } answer) return [];
        return [.. answer.Value.Entries.Select(entry => new PlacedStep(
            entry.Step, entry.Stated?.Seconds.ToString("0.#########", CultureInfo.InvariantCulture)))];
    }

    /// <summary>Reads a number of seconds with a decimal point or a decimal comma.</summary>
    /// <param name="text">The text as typed.</param>
    /// <param name="seconds">The time.</param>
    public static bool TryReadSeconds(string text, out Duration seconds)
    {
        ArgumentNullException.ThrowIfNull(text);
        seconds = default;
        return text.Length <= 20
            && decimal.TryParse(text.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && Duration.TryFromSeconds(number, out seconds);
    }

    private static int Place(string text, int count) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var place) && place >= 1 && place <= count
            ? place - 1
            : -1;
}

/// <summary>A time of an order that cannot be taken as it stands.</summary>
/// <param name="Step">The wait that it belongs to.</param>
/// <param name="Why">What is wrong with it.</param>
public sealed record WrongTime(StepId Step, Refusal Why);

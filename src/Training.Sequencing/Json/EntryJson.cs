using System.Globalization;
using System.Text.Json;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Json;

/// <summary>Reads one entry of an answer.</summary>
internal static class EntryJson
{
    public static Entry Read(JsonElement element, EntryPlace where)
    {
        if (element.ValueKind != JsonValueKind.Object)
            throw new AnswerJson.Refused($"{where}: an entry is an object with a “step”.");
        string? step = null;
        Duration? seconds = null;
        Duration? startedAt = null;
        Duration? finishedAt = null;
        foreach (var part in AnswerJson.Parts(element, where))
        {
            switch (part.Name)
            {
                case "step": step = Text(part, where); break;
                case "seconds": seconds = Seconds(part, where); break;
                case "startedAt": startedAt = Seconds(part, where); break;
                case "finishedAt": finishedAt = Seconds(part, where); break;
                default:
                    throw new AnswerJson.Refused($"{where} has an unknown key “{AnswerJson.Short(part.Name)}”.");
            }
        }

        if (step is null) throw new AnswerJson.Refused($"{where} has no “step”.");
        return new(new(step)) { Stated = seconds, Observed = Observed(startedAt, finishedAt, where) };
    }

    private static Times? Observed(Duration? startedAt, Duration? finishedAt, EntryPlace where)
    {
        if (startedAt is null && finishedAt is null) return null;
        if (startedAt is null || finishedAt is null)
            throw new AnswerJson.Refused($"{where} has only one of “startedAt” and “finishedAt”.");
        return Times.TryCreate(startedAt.Value, finishedAt.Value, out var times)
            ? times
            : throw new AnswerJson.Refused($"{where} was finished before it was started.");
    }

    private static string Text(JsonProperty part, EntryPlace where) =>
        part.Value.ValueKind == JsonValueKind.String
            ? part.Value.GetString()!
            : throw new AnswerJson.Refused($"{where}: “step” is the id of a step, in quotation marks.");

    /// <summary>A time; none where its value is null, which many writers of JSON put for what they have not.</summary>
    private static Duration? Seconds(JsonProperty part, EntryPlace where)
    {
        if (part.Value.ValueKind == JsonValueKind.Null) return null;
        if (part.Value.ValueKind != JsonValueKind.Number)
            throw new AnswerJson.Refused($"{where}: “{part.Name}” is a number of seconds, without quotation marks.");
        if (part.Value.TryGetDecimal(out var number) && Duration.TryFromSeconds(number, out var duration)) return duration;
        throw new AnswerJson.Refused(
            $"{where}: “{part.Name}” must lie between 0 and {Duration.Longest}, not “{AnswerJson.Short(part.Value.GetRawText())}”.");
    }
}

/// <summary>Where an entry stands, written out only where there is something to say of it.</summary>
/// <param name="Number">The place, from 1.</param>
/// <param name="Whose">Of which list.</param>
internal readonly record struct EntryPlace(int Number, string Whose)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Place {Number}{Whose}");
}

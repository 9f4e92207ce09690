using System.Text.Json;
using Training.Sequencing;

namespace Training.Records.Asking;

/// <summary>
/// The answer to a reading, in JSON <c>{"value":"12.4 V","decision":"2"}</c>: the value as it was typed, its unit with
/// it or not, and the number of the decision. Either may be missing while the answer is being made.
/// </summary>
/// <param name="Value">The value as typed; empty where nothing was.</param>
/// <param name="Decision">The decision's number; null where none was chosen.</param>
public sealed record TypedReading(string Value, string? Decision)
{
    /// <summary>Reads an answer, or says why it is none.</summary>
    /// <param name="json">The answer.</param>
    public static Outcome<TypedReading, Refusal> Parse(string json)
    {
        try
        {
            using var read = JsonDocument.Parse(json, new() { MaxDepth = 2 });
            var parts = read.RootElement.ValueKind == JsonValueKind.Object ? read.RootElement.EnumerateObject().ToList() : [];
            if (parts.Count is 1 or 2 && parts.All(part => part.Name is "value" or "decision" && part.Value.ValueKind == JsonValueKind.String)
                && parts.DistinctBy(part => part.Name).Count() == parts.Count)
            {
                return new TypedReading(
                    parts.Find(part => part.Name == "value") is { Value.ValueKind: JsonValueKind.String } value ? value.Value.GetString()! : "",
                    parts.Find(part => part.Name == "decision") is { Value.ValueKind: JsonValueKind.String } decision ? decision.Value.GetString() : null);
            }
        }
        catch (JsonException)
        {
            // Said below, together with every other way in which it is no such answer.
        }

        return new Refusal("The answer to this question is a value and a decision.");
    }

    /// <summary>Writes an answer.</summary>
    /// <param name="typed">What was typed and chosen.</param>
    public static string Write(TypedReading typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return typed.Decision is null
            ? JsonSerializer.Serialize(new { value = typed.Value })
            : JsonSerializer.Serialize(new { value = typed.Value, decision = typed.Decision });
    }
}

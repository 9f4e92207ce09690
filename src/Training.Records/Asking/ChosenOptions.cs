using System.Text.Json;
using Training.Sequencing;

namespace Training.Records.Asking;

/// <summary>The options that were chosen as an answer in JSON: <c>{"chosen":["1","3"]}</c>, none chosen yet included.</summary>
public static class ChosenOptions
{
    /// <summary>Reads an answer, or says why it is none.</summary>
    /// <param name="json">The answer.</param>
    public static Outcome<IReadOnlyList<string>, Refusal> Parse(string json)
    {
        try
        {
            using var read = JsonDocument.Parse(json, new() { MaxDepth = 4 });
            if (read.RootElement.ValueKind == JsonValueKind.Object
                && read.RootElement.EnumerateObject().ToList() is [{ Name: "chosen", Value: { ValueKind: JsonValueKind.Array } list }]
                && list.EnumerateArray().All(item => item.ValueKind == JsonValueKind.String))
                return list.EnumerateArray().Select(item => item.GetString()!).ToList();
        }
        catch (JsonException)
        {
            // Said below, together with every other way in which it is no such answer.
        }

        return new Refusal("The answer to this question is what is chosen of its options.");
    }

    /// <summary>Writes an answer.</summary>
    /// <param name="chosen">The ids of the options.</param>
    public static string Write(IReadOnlyList<string> chosen) => JsonSerializer.Serialize(new { chosen });
}

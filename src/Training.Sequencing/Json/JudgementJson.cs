using System.Buffers;
using System.Text;
using System.Text.Json;
using Training.Sequencing.Questions;

namespace Training.Sequencing.Json;

/// <summary>
/// Judgements of questions with options as JSON, in camelCase, on one line: <c>accepted</c>, <c>safe</c>, <c>score</c>
/// and <c>findings</c>, as a verdict has them. Which options are right is not in it: the seed tells that again.
/// </summary>
public static class JudgementJson
{
    /// <summary>Writes a judgement.</summary>
    /// <param name="judgement">The judgement.</param>
    public static string Write(Judgement judgement)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, JsonText.Options))
        {
            writer.WriteStartObject();
            writer.WriteBoolean(JsonNames.Accepted, judgement.IsRight);
            writer.WriteBoolean(JsonNames.Safe, judgement.Safe);
            writer.WriteNumber(JsonNames.Score, judgement.Score);
            writer.WriteStartArray(JsonNames.Findings);
            foreach (var finding in judgement.Findings) VerdictJson.Write(writer, finding);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }
}

using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Training.Sequencing.Analysis;

namespace Training.Sequencing.Json;

/// <summary>Analyses as JSON, in camelCase, on one line; numbers of any size are texts.</summary>
public static class AnalysisJson
{
    /// <summary>Writes an analysis.</summary>
    /// <param name="report">What was found.</param>
    /// <param name="problems">The remarks with their places, one a line: <c>file:line:column: remark: sentence</c>.</param>
    public static string Write(AnalysisReport report, IEnumerable<string> problems)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(problems);
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, JsonText.Options)) Write(writer, report, problems);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static void Write(Utf8JsonWriter writer, AnalysisReport report, IEnumerable<string> problems)
    {
        writer.WriteStartObject();
        writer.WriteNumber("steps", report.Steps);
        writer.WriteString("acceptedOrders", report.Accepted.Count.ToString(CultureInfo.InvariantCulture));
        writer.WriteBoolean("exact", report.Accepted.IsExact);
        writer.WriteString("low", report.Accepted.Low.ToString(CultureInfo.InvariantCulture));
        writer.WriteString("high", report.Accepted.High.ToString(CultureInfo.InvariantCulture));
        writer.WriteNumber("guessChance", report.GuessChance);
        writer.WriteStartArray("redundantRules");
        foreach (var rule in report.RedundantRules) writer.WriteStringValue(rule.Value);
        writer.WriteEndArray();
        if (report.Shortest is { } shortest) writer.WriteNumber("shortestSeconds", shortest.Seconds);
        else writer.WriteNull("shortestSeconds");
        writer.WriteStartArray("problems");
        foreach (var problem in problems) writer.WriteStringValue(problem);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}

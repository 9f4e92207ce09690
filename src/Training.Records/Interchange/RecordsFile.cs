using System.Globalization;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;
using NodaTime.Text;
using Training.Records.Certifying;
using Training.Records.Overviews;

namespace Training.Records.Interchange;

/// <summary>Who may do what on a day, as a file for other programs: a line for each record that counts.</summary>
public static class RecordsFile
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>
    /// As separated values (RFC 4180). A field that begins like a formula gets an apostrophe before it, so that a spreadsheet
    /// shows a name and does not reckon it.
    /// </summary>
    /// <param name="table">The people and their records.</param>
    public static string Csv(CompetencyTable table)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using var writer = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { InjectionOptions = InjectionOptions.Escape, NewLine = "\r\n" });
        writer.WriteRecords(Lines(table));
        writer.Flush();
        return text.ToString();
    }

    /// <summary>As JSON: a list of the same lines.</summary>
    /// <param name="table">The people and their records.</param>
    public static string JsonText(CompetencyTable table) => JsonSerializer.Serialize(Lines(table), Json);

    private static IEnumerable<Line> Lines(CompetencyTable table) =>
        from row in table.Rows
        from record in row.Records.OfType<RecordLine>()
        let standing = record.Standing
        select new Line(
            row.Name, row.Person.ToString(), row.Shop.Name, record.Competency.ToString(), record.CompetencyTitle, record.Id.ToString(),
            standing?.State.ToString().ToLowerInvariant() ?? "none", standing is { Holds: true }, Day(standing?.Since), Day(standing?.Until),
            Day(standing?.RenewFrom), Day(standing?.ConfirmBy), Day(row.On));

    private static string Day(NodaTime.LocalDate? day) => day is { } known ? LocalDatePattern.Iso.Format(known) : "";

    private sealed record Line(
        string Name, string Person, string Shop, string Competency, string Title, string Record, string State, bool Holds, string Since,
        string Until, string RenewFrom, string ConfirmBy, string AsOf);
}

using System.Text.Json;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;
using Training.Records.Interchange;
using Training.Records.Overviews;

namespace Training.Records.Tests.Interchange;

public sealed class RecordsFileTests
{
    [Fact]
    public void A_line_tells_who_may_do_what_and_until_when_as_of_the_day()
    {
        var lines = RecordsFile.Csv(Table("Amara Okafor")).Split("\r\n");
        Assert.Equal("Name,Person,Shop,Competency,Title,Record,State,Holds,Since,Until,RenewFrom,ConfirmBy,AsOf", lines[0]);
        Assert.StartsWith("Amara Okafor,", lines[1], StringComparison.Ordinal);
        Assert.EndsWith(",due,True,2025-01-04,2027-01-04,2026-10-04,,2026-11-25", lines[1], StringComparison.Ordinal);
        Assert.Equal("", Assert.Single(lines[2..]));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+cmd")]
    [InlineData("-2")]
    [InlineData("@sum")]
    public void A_name_that_begins_like_a_formula_is_shown_by_a_spreadsheet_and_not_reckoned(string name) =>
        Assert.Contains($"'{name}", RecordsFile.Csv(Table(name)), StringComparison.Ordinal);

    [Fact]
    public void A_name_with_a_comma_and_a_quotation_mark_stays_one_field() =>
        Assert.Contains("\"Okafor, \"\"Amara\"\"\"", RecordsFile.Csv(Table("Okafor, \"Amara\"")), StringComparison.Ordinal);

    [Fact]
    public void The_same_lines_are_there_as_JSON()
    {
        using var json = JsonDocument.Parse(RecordsFile.JsonText(Table("Amara Okafor")));
        var line = Assert.Single(json.RootElement.EnumerateArray());
        Assert.Equal("due", line.GetProperty("state").GetString());
        Assert.True(line.GetProperty("holds").GetBoolean());
        Assert.Equal("2027-01-04", line.GetProperty("until").GetString());
    }

    private static CompetencyTable Table(string name)
    {
        var now = Instant.FromUtc(2026, 11, 25, 9, 0);
        var (person, competency) = (PersonId.New(now), new CompetencyId("electrical-isolation"));
        var record = new RecordLine(RecordId.New(now), person, name, "Quillmoor Coachworks", competency, "Electrical isolation",
            new(RecordState.Due, new(2025, 1, 4), new(2027, 1, 4), new(2026, 10, 4)), IsNewest: true);
        return new([new(competency, "Electrical isolation")],
            [new(person, name, new(ShopId.New(now), "Quillmoor Coachworks", "Europe/London"), new(2026, 11, 25), [record])]);
    }
}

using System.Net;
using AngleSharp.Html.Dom;
using Training.Measures.Readings;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Bench;

/// <summary>The calculator of the bench.</summary>
[Collection(SharedHouse.Name)]
public sealed class BenchTests(TrainingHouse house)
{
    // A number that each kind of input can have, in the unit that its form shows.
    private static readonly Dictionary<string, string> Sound = new()
    {
        ["specific gravity"] = "1.250",
        ["temperature"] = "20",
        ["voltage"] = "12",
        ["current"] = "10",
        ["length"] = "2",
        ["cross-section"] = "25",
        ["power"] = "60",
        ["charge"] = "100",
        ["percentage"] = "80",
        ["time"] = "3",
    };

    public static TheoryData<string> EachMeasure => [.. Measure.All.Select(measure => measure.Id)];

    [Fact]
    public async Task The_first_page_leads_to_every_measure()
    {
        var page = await (await house.SignedIn("bao")).Get("/bench");
        Assert.Equal(
            Measure.All.Select(measure => $"/bench/{measure.Id}").Order(StringComparer.Ordinal),
            page.QuerySelectorAll("main a.line").Select(link => link.GetAttribute("href")!).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(EachMeasure))]
    public async Task Every_measure_is_worked_out_with_its_sum_and_a_source_to_every_line(string id)
    {
        var measure = Measure.Find(id).Value;
        var query = string.Join('&', measure.Inputs.Select(input => $"{input.Name}={Sound[input.Kind.Name.ToString()]}"));
        var page = await (await house.SignedIn("bao")).Get($"/bench/{id}?{query}");
        var rules = measure.Choices.Aggregate(1, (product, choice) => product * choice.Options.Count);
        Assert.Equal(rules, page.QuerySelectorAll(".bench-answers > section").Length);
        Assert.Equal(rules, page.QuerySelectorAll(".bench-result").Length);
        Assert.All(page.QuerySelectorAll(".bench-sum > li"), line => Assert.NotEqual("", line.QuerySelector("small")!.TextContent.Trim()));
    }

    // TM 5-3805-262-20 para 5-9: 12.4 V is 75 %.
    [Theory]
    [InlineData("12.4", "V")]
    [InlineData("12,4", "V")]
    [InlineData("12400", "mV")]
    [InlineData("12400 mV", "V")]
    public async Task A_number_is_read_with_comma_or_point_and_in_its_unit(string typed, string unit)
    {
        var page = await (await house.SignedIn("bao")).Get($"/bench/charge-from-voltage?voltage={Uri.EscapeDataString(typed)}&voltage-unit={unit}");
        Assert.Equal("75\u00A0%", page.QuerySelector(".bench-result")!.TextContent);
    }

    [Theory]
    [InlineData("/bench/charge-from-voltage", "voltage", "99")]
    [InlineData("/bench/charge-from-voltage", "voltage", "lots")]
    [InlineData("/bench/corrected-gravity", "gravity", "3")]
    public async Task What_cannot_be_is_refused_beside_its_field_and_what_was_typed_stays(string address, string field, string typed)
    {
        var answer = await (await house.SignedIn("bao")).Ask($"{address}?{field}={typed}&electrolyte=20");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var input = (IHtmlInputElement)(await Visitor.Page(answer)).GetElementById(field)!;
        Assert.Equal(typed, input.Value);
        Assert.Equal("true", input.GetAttribute("aria-invalid"));
        Assert.NotEqual("", input.Closest(".field")!.QuerySelector(".wrong")!.TextContent);
    }

    [Fact]
    public async Task Rules_that_disagree_stand_side_by_side_and_one_can_be_chosen()
    {
        var bao = await house.SignedIn("bao");
        const string Numbers = "/bench/corrected-gravity?gravity=1.250&electrolyte=15.6";
        Assert.Equal(2, (await bao.Get(Numbers)).QuerySelectorAll(".bench-result").Length);
        Assert.Single((await bao.Get(Numbers + "&correction=by-ten")).QuerySelectorAll(".bench-result"));
    }

    [Fact]
    public async Task A_rule_that_says_nothing_of_the_numbers_leaves_the_others()
    {
        // IEC 60228 has no row for 30 mm²; the sum from the copper itself needs none.
        var page = await (await house.SignedIn("bao")).Get("/bench/conductor-resistance?length=2&section=30&copper=20");
        Assert.Equal(6, page.QuerySelectorAll(".bench-answers > section").Length);
        Assert.Equal(2, page.QuerySelectorAll(".bench-result").Length);
    }

    [Fact]
    public async Task The_limits_in_print_stand_beside_a_spread()
    {
        var cells = string.Join('&', new[] { 1.265, 1.265, 1.265, 1.265, 1.265, 1.230 }.Select((gravity, at) =>
            FormattableString.Invariant($"cell-{at + 1}={gravity:F3}")));
        var page = await (await house.SignedIn("bao")).Get($"/bench/cell-spread?{cells}");
        Assert.Equal(2, page.QuerySelectorAll(".word-bad").Length);
        Assert.Single(page.QuerySelectorAll(".word-good"));
    }

    [Fact]
    public async Task A_Spanish_reader_reads_numbers_with_a_comma()
    {
        var (visitor, _) = await house.NewTechnician();
        await visitor.Post("/language", (await visitor.Get("/bench")).TokenIn(), ("language", "es"), ("back", "/bench"));
        var page = await visitor.Get("/bench/voltage-drop?length=2&section=25&copper=20&current=100&basis=computed&temperature-rule=from-230");
        Assert.Contains("1,379\u00A0mΩ", page.QuerySelector(".bench-sum")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_measure_that_is_none_is_not_found() =>
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("bao")).Ask("/bench/nothing")).StatusCode);
}

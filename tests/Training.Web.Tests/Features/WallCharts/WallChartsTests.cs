using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Publishing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.WallCharts;

/// <summary>What stands on a wall chart. That each fits one sheet is seen in a browser.</summary>
[Collection(SharedHouse.Name)]
public sealed partial class WallChartsTests(TrainingHouse house)
{
    private const string Chart = "/procedures/isolate-chassis/wall-chart";

    [Theory]
    [InlineData("bao")]
    [InlineData("tomasz")]
    [InlineData("renske")]
    [InlineData("hollis")]
    [InlineData("ifeoma")]
    public async Task Everybody_who_is_signed_in_finds_every_chart(string userName)
    {
        var visitor = await house.SignedIn(userName);
        var links = (await visitor.Get("/wall-charts")).QuerySelectorAll("main .lines a").Select(link => link.GetAttribute("href")!).ToList();
        Assert.Equal(
            house.Services.GetRequiredService<Library>().Current.Content.Procedures.Select(written => $"/procedures/{written.Id}/wall-chart").Order(StringComparer.Ordinal),
            links.Order(StringComparer.Ordinal));
        var lesson = (await visitor.Get(links[0])).QuerySelectorAll("main a[href^='/modules/']").SingleOrDefault();
        Assert.Equal(userName == "ifeoma", lesson is null);
        if (lesson is not null) await visitor.Get(lesson.GetAttribute("href")!);
    }

    [Fact]
    public async Task A_chart_tells_in_words_what_its_plan_draws()
    {
        var page = await (await house.SignedIn("bao")).Get(Chart);
        var steps = page.QuerySelectorAll("ol.chart-words > li");
        Assert.Equal(page.QuerySelectorAll(".chart-plan circle").Length, steps.Length);
        Assert.Equal(Enumerable.Range(1, steps.Length).Select(number => $"{number}"), steps.Select(step => step.GetAttribute("value")));
        var isolator = steps.Single(step => step.TextContent.Contains("Turn the isolator handle", StringComparison.Ordinal)).TextContent;
        Assert.Contains("bus L18: Open the isolator switch", isolator, StringComparison.Ordinal);
        Assert.Contains("truck K26: Turn the isolator handle", isolator, StringComparison.Ordinal);
        Assert.Contains("90\u00a0s or longer after", isolator, StringComparison.Ordinal);
        Assert.Contains("It rolls, and it rolls without warning.", isolator, StringComparison.Ordinal);
        Assert.Contains(steps, step => step.TextContent.Contains("if needed", StringComparison.Ordinal));
        Assert.Contains(steps, step => step.TextContent.Contains("or: Prove the tester on the proving unit", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_chart_says_what_never_and_signals_what_hurts()
    {
        var page = await (await house.SignedIn("bao")).Get(Chart);
        Assert.Equal(6, page.QuerySelectorAll(".chart-never").Length);
        Assert.Equal(["Danger", "Warning", "Caution"], page.QuerySelectorAll(".chart-side h3.signal-word").Select(word => word.TextContent).Take(3));
        Assert.NotEmpty(page.QuerySelectorAll(".chart-plan svg path[stroke-width='2'][fill]:not([fill=none])"));
    }

    [Fact]
    public async Task A_chart_names_its_revision_its_hash_and_the_day()
    {
        var foot = (await (await house.SignedIn("bao")).Get(Chart)).QuerySelector(".chart-foot")!.TextContent;
        var hash = house.Services.GetRequiredService<Library>().Current.Content.FindProcedure(new("isolate-chassis"))!.File.Hash.Hex;
        Assert.Contains($"Revision 1, {hash[..8]}, printed on ", foot, StringComparison.Ordinal);
        Assert.Matches(Day(), foot);
    }

    [Theory]
    [InlineData("en", "Never")]
    [InlineData("es", "Nunca")]
    [InlineData("hi", "कभी नहीं")]
    public async Task A_chart_can_be_had_in_another_language_than_the_readers(string language, string never)
    {
        var page = await (await house.SignedIn("bao")).Get($"{Chart}?language={language}");
        Assert.Equal(language, page.QuerySelector("article.chart")!.GetAttribute("lang"));
        Assert.Equal(never, page.QuerySelector(".chart-never-word")!.TextContent);
        var procedure = house.Services.GetRequiredService<Library>().Current.Content.FindProcedure(new("isolate-chassis"))!.In(language);
        Assert.Equal(procedure.Title, page.QuerySelector("article.chart h1")!.TextContent);
    }

    [Fact]
    public async Task No_chart_counts_half_an_hour_in_seconds()
    {
        var visitor = await house.SignedIn("bao");
        foreach (var written in house.Services.GetRequiredService<Library>().Current.Content.Procedures)
        {
            var page = await visitor.Get($"/procedures/{written.Id}/wall-chart");
            Assert.DoesNotMatch(ManySeconds(), page.QuerySelector("article.chart")!.TextContent);
        }

        Assert.Contains("30\u00a0min or longer after", (await visitor.Get("/procedures/prepare-for-welding/wall-chart")).QuerySelector("article.chart")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lesson_leads_to_the_charts_of_what_it_teaches()
    {
        var links = (await (await house.SignedIn("bao")).Get("/modules/02-shut-down-and-isolate"))
            .QuerySelectorAll("section[aria-labelledby=charts-title] a").Select(link => link.GetAttribute("href"));
        Assert.Equal([Chart, "/procedures/end-isolation/wall-chart"], links);
    }

    [Fact]
    public async Task A_procedure_that_is_not_taught_has_no_chart() =>
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("bao")).Ask("/procedures/fold-paper/wall-chart")).StatusCode);

    [GeneratedRegex(@"\b\d{3,}\s?s\b")]
    private static partial Regex ManySeconds();

    [GeneratedRegex(@"\d{1,2} [A-Z][a-z]{2} \d{4}")]
    private static partial Regex Day();
}

using NodaTime;
using Training.Records;
using Training.Web.Features.Shared;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Papers;

/// <summary>The clock over a paper.</summary>
public sealed class PaperClockTests
{
    [Theory]
    [InlineData(301, null)]
    [InlineData(300, 5)]
    [InlineData(241, 5)]
    [InlineData(240, 4)]
    [InlineData(60, 1)]
    [InlineData(0, 1)]
    public void Only_in_the_last_five_minutes_it_tells_how_many_are_left(int seconds, int? told) => Assert.Equal(
        told, new PaperClockView(new PaperId(Guid.Empty), default, Duration.FromSeconds(seconds), "Europe/London").SoonOver);

    [Fact]
    public async Task Without_a_script_a_page_of_the_last_five_minutes_says_so_and_one_minute_is_one()
    {
        await using var house = new ClockedHouse();
        var renske = await house.SignedIn("renske");
        var opened = await renske.Press((await renske.Get("/sittings")).Button("Open the sitting"), ("Place", "Bay 7"));
        var sitting = await renske.Follow(opened);
        await renske.Press(sitting.QuerySelectorAll("button[name=person]").First(button => button.TextContent.Contains("Mele", StringComparison.Ordinal)));
        var mele = await house.SignedIn("mele");
        var paper = (await mele.Get("/next")).QuerySelector("a[href^='/papers/']")!.GetAttribute("href")!;
        await mele.Post($"{paper}/beginning", (await mele.Get("/password")).TokenIn());
        Assert.Equal("", await Told());
        house.Clock.Pass(TimeSpan.FromMinutes(26));
        Assert.Equal("4 minutes are left. What is saved counts.", await Told());
        house.Clock.Pass(TimeSpan.FromMinutes(3));
        Assert.Equal("1 minute is left. What is saved counts.", await Told());

        async Task<string> Told() => (await mele.Get(paper)).QuerySelector("[data-paper-clock-soon]")!.TextContent.Trim();
    }
}

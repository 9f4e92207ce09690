using Microsoft.Extensions.DependencyInjection;
using Training.Content;
using Training.Records.Publishing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Desk;

[Collection(SharedHouse.Name)]
public sealed class DeskTests(TrainingHouse house)
{
    [Theory]
    [InlineData("tomasz")]
    [InlineData("keiko")]
    public async Task A_trainer_is_told_first_what_people_get_wrong_most_surely_as_the_content_page_has_it(string userName)
    {
        var trainer = await house.SignedIn(userName);
        var first = (await trainer.Get("/desk")).QuerySelector("main .sheet")!;
        var worst = (await trainer.Get("/publishing")).QuerySelector("section[aria-labelledby=wrong] a.result-name")!;
        var line = first.QuerySelector("a[href^='/results/']")!;
        Assert.Equal(worst.GetAttribute("href"), line.GetAttribute("href"));
        Assert.Contains(worst.TextContent, line.TextContent, StringComparison.Ordinal);
        Assert.Contains(worst.ParentElement!.QuerySelector(".share > span")!.TextContent.Trim(), line.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_trainer_is_told_first_how_much_of_the_content_is_broken()
    {
        var tomasz = await house.SignedIn("tomasz");
        Assert.Equal("Nothing is broken", (await tomasz.Get("/desk")).QuerySelector("main .sheet a[href='/publishing'] strong")!.TextContent);

        var publisher = house.Services.GetRequiredService<Publisher>();
        var files = ContentFolder.Read(house.Services.GetRequiredService<Startup.House>().Content);
        await publisher.Publish([.. files, new("procedures/half-written.yaml", "id: half-written\ntitle: Half written\nsteps: nothing\n")]);
        var told = (await tomasz.Get("/desk")).QuerySelector("main .sheet a[href='/publishing'] strong")!.TextContent;
        var broken = (await tomasz.Get("/publishing")).QuerySelector("#broken")!.TextContent;
        await publisher.Publish(files);

        Assert.Matches(@"^\d+ things? (is|are) broken$", told);
        Assert.Equal(broken, told);
    }
}

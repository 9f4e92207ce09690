using Microsoft.Extensions.DependencyInjection;
using Training.Content;
using Training.Records.Publishing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Publishing;

[Collection(SharedHouse.Name)]
public sealed class PublishingTests(TrainingHouse house)
{
    [Fact]
    public async Task A_trainer_sees_what_is_broken_at_its_place_and_that_the_last_good_one_is_served()
    {
        var tomasz = await house.SignedIn("tomasz");
        var page = await tomasz.Get("/publishing");
        Assert.Contains("Nothing is broken", page.QuerySelector("h2")!.TextContent, StringComparison.Ordinal);

        var publisher = house.Services.GetRequiredService<Publisher>();
        var files = ContentFolder.Read(house.Services.GetRequiredService<Startup.House>().Content);
        await publisher.Publish([.. files, new("procedures/half-written.yaml", "id: half-written\ntitle: Half written\nsteps: nothing\n")]);

        page = await tomasz.Get("/publishing");
        var broken = page.QuerySelector("section[aria-labelledby=broken]")!;
        Assert.Matches("broken", broken.QuerySelector("h2")!.TextContent);
        Assert.Contains("the last good one", broken.TextContent, StringComparison.Ordinal);
        Assert.All(broken.QuerySelectorAll("code"), place => Assert.Matches(@"^procedures/half-written\.yaml:\d+:\d+$", place.TextContent));
        Assert.NotEmpty(broken.QuerySelectorAll("code"));

        Assert.NotNull(await new FolderWatch("/no/such/folder", publisher).Look());
        broken = (await tomasz.Get("/publishing")).QuerySelector("section[aria-labelledby=broken]")!;
        Assert.Contains("There is no content folder", broken.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("What stands in the content folder", broken.TextContent, StringComparison.Ordinal);

        await publisher.Publish(files);
        Assert.Contains("Nothing is broken", (await tomasz.Get("/publishing")).QuerySelector("h2")!.TextContent, StringComparison.Ordinal);
    }
}

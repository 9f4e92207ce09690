using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.NameRemovals;

public sealed class NameRemovalsTests
{
    [Fact]
    public async Task An_administrator_is_told_what_will_happen_and_removes_the_name_only_with_the_box_ticked()
    {
        await using var house = new TrainingHouse();
        var hollis = await house.SignedIn("hollis");
        var bao = (await hollis.Get("/people")).QuerySelectorAll("a[href^='/people/']")
            .First(link => link.TextContent.Contains("Bao Nguyen", StringComparison.Ordinal)).GetAttribute("href")!;
        var ifeoma = await house.SignedIn("ifeoma");
        var person = await ifeoma.Get(bao);
        var page = await ifeoma.Get(person.QuerySelector("a[href$='/name-removal']")!.GetAttribute("href")!);
        Assert.Contains("It cannot be taken back.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        page = await ifeoma.Follow(await ifeoma.Press(page.Button("Remove the name")));
        Assert.Contains("Nothing was changed.", page.Said(), StringComparison.Ordinal);
        var after = await ifeoma.Follow(await ifeoma.Press(page.Button("Remove the name"), ("sure", "yes")));
        Assert.DoesNotContain("Bao", after.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var record = await ifeoma.Get(after.QuerySelector("a[href^='/records/']")!.GetAttribute("href")!);
        Assert.Contains("Name removed on", record.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Nguyen", (await hollis.Get("/people")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null((await hollis.Get(bao)).QuerySelector("a[href$='/name-removal']"));
    }
}

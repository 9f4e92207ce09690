using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Shops;

[Collection(SharedHouse.Name)]
public sealed class ShopsTests(TrainingHouse house)
{
    [Fact]
    public async Task An_administrator_adds_a_shop_and_is_led_on_to_its_people()
    {
        var ifeoma = await house.SignedIn("ifeoma");
        var answer = await ifeoma.Press((await ifeoma.Get("/shops")).Button("Add the shop"), ("Name", "Harrowgate Hauliers"), ("TimeZone", "Europe/Lisbon"));
        Assert.Equal("/people", answer.Headers.Location!.ToString());
        Assert.Contains("Harrowgate Hauliers", (await ifeoma.Get("/shops")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Quillmoor Coachworks", "Europe/London")]
    [InlineData("Moonbase Bodies", "Moon/Tycho")]
    public async Task A_name_that_is_taken_or_a_zone_that_is_none_is_refused_and_what_was_typed_stays(string name, string zone)
    {
        var ifeoma = await house.SignedIn("ifeoma");
        var answer = await ifeoma.Press((await ifeoma.Get("/shops")).Button("Add the shop"), ("Name", name), ("TimeZone", zone));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.NotEqual("", page.QuerySelector("#wrong")!.TextContent);
        Assert.Equal(name, page.QuerySelector("#Name")!.GetAttribute("value"));
    }
}

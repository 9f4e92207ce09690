using System.Net;
using System.Text.Json;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.PersonFiles;

[Collection(SharedHouse.Name)]
public sealed class PersonFilesTests(TrainingHouse house)
{
    [Fact]
    public async Task Everybody_can_take_away_what_is_held_about_them()
    {
        var bao = await house.SignedIn("bao");
        Assert.NotNull((await bao.Get("/password")).QuerySelector("a[href='/everything-about-me.json']"));
        var answer = await bao.Ask("/everything-about-me.json");
        Assert.True(answer.Headers.CacheControl!.NoStore);
        using var file = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal("Bao Nguyen", file.RootElement.GetProperty("account").GetProperty("name").GetString());
        var id = file.RootElement.GetProperty("account").GetProperty("id").GetString();

        Assert.Equal(HttpStatusCode.OK, (await (await house.SignedIn("ifeoma")).Ask($"/people/{id}/everything.json")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("hollis")).Ask($"/people/{id}/everything.json")).StatusCode);
    }
}

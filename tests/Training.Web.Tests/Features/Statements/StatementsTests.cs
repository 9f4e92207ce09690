using System.Net;
using System.Text.Json;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Statements;

[Collection(SharedHouse.Name)]
public sealed class StatementsTests(TrainingHouse house)
{
    [Fact]
    public async Task A_trainer_downloads_all_attempts_as_one_list()
    {
        var tomasz = await house.SignedIn("tomasz");
        Assert.NotNull((await tomasz.Get("/statements")).QuerySelector("form[action='/statements.json']"));
        var answer = await tomasz.Ask("/statements.json");
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        using var list = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.True(list.RootElement.GetArrayLength() > 10);
    }

    [Fact]
    public async Task A_time_without_attempts_is_an_empty_list_and_what_is_no_day_is_told()
    {
        var tomasz = await house.SignedIn("tomasz");
        Assert.Equal("[]", (await (await tomasz.Ask("/statements.json?first=2000-01-01&last=2000-01-02")).Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).Trim());
        var answer = await tomasz.Ask("/statements.json?first=yesterday");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Contains("2026-03-14", (await tomasz.Follow(answer)).Said(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shop=rubbish", "shop")]
    [InlineData("last=9999-12-31", "last")]
    [InlineData("first=-9998-01-01", "first")]
    public async Task What_cannot_be_meant_is_refused_and_gives_no_statements(string asked, string field)
    {
        var ifeoma = await house.SignedIn("ifeoma");
        var answer = await ifeoma.Ask($"/statements.json?{asked}");
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(field, (await ifeoma.Follow(answer)).QuerySelector("[aria-invalid=true]")!.Id);
    }
}

using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Competencies;

[Collection(SharedHouse.Name)]
public sealed class CompetenciesTests(TrainingHouse house)
{
    [Fact]
    public async Task Whoever_is_shown_a_credential_can_read_what_it_asks_without_signing_in()
    {
        var page = await house.Stranger().Get("/competencies/electrical-isolation");
        var text = page.Body!.TextContent;
        // As the file of the competency says it: 80 points, 30 minutes, 24 months, renewal in the last three.
        foreach (var part in new[] { "Electrical isolation of a chassis", "8 questions in 30 minutes", "80 of 100", "24 months", "3 months", "30 days" })
            Assert.Contains(part, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_told_in_the_readers_language()
    {
        var stranger = house.Stranger();
        stranger.Client.DefaultRequestHeaders.AcceptLanguage.ParseAdd("es");
        Assert.DoesNotContain("Electrical isolation", (await stranger.Get("/competencies/electrical-isolation")).QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_never_was_is_not_found() =>
        Assert.Equal(HttpStatusCode.NotFound, (await house.Stranger().Ask("/competencies/no-such")).StatusCode);
}

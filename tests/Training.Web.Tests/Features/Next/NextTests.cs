using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Publishing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Next;

[Collection(SharedHouse.Name)]
public sealed class NextTests(TrainingHouse house)
{
    [Fact]
    public async Task A_newcomer_is_told_to_read_the_first_lesson()
    {
        var (visitor, _) = await house.NewTechnician();
        var act = (await visitor.Get("/next")).QuerySelector(".next-act a.main-act")!;
        var first = await house.With(services =>
            Task.FromResult(services.GetRequiredService<Library>().Current.Content.Competencies[0].Modules[0]));
        Assert.Equal($"/modules/{first}", act.GetAttribute("href"));
    }

    [Fact]
    public async Task The_way_shows_in_words_what_is_done_and_what_is_not()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Get("/modules/02-shut-down-and-isolate");
        await visitor.Press(page.Button("I have read this lesson"));
        var read = (await visitor.Get("/next")).QuerySelector("section[aria-label='Electrical isolation of a chassis'] details.way")!;
        Assert.Contains("1 of 3 done", read.QuerySelector("summary")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(["done", "not yet", "not yet"], read.QuerySelectorAll("li .way-word").Select(word => word.TextContent.Trim()));
    }

    [Fact]
    public async Task Someone_with_a_record_sees_first_until_when_it_is_good()
    {
        var page = await (await house.SignedIn("joao")).Get("/next");
        var first = page.QuerySelector(".sheet-first")!;
        Assert.NotNull(first.QuerySelector(".state-current"));
        Assert.Matches(@"until \d{1,2} [A-Z][a-z]{2} \d{4}", first.TextContent);
    }

    [Fact]
    public async Task A_paper_that_may_be_begun_comes_before_all_reading()
    {
        var (visitor, person) = await house.NewTechnician();
        var (paper, _) = await house.Admit(person);
        var page = await visitor.Get("/next");
        Assert.Equal($"/papers/{paper}", page.QuerySelector(".next-act a.main-act")!.GetAttribute("href"));
    }

    [Fact]
    public async Task Whose_record_is_suspended_is_told_by_whom_since_when_and_why_and_whom_to_ask()
    {
        var page = await (await house.SignedIn("sione")).Get("/next");
        var said = page.QuerySelector("main .said")!;
        Assert.Contains("Hollis Penrose suspended it on", said.TextContent, StringComparison.Ordinal);
        Assert.Contains("Back from long sick leave", said.TextContent, StringComparison.Ordinal);
        Assert.Contains("The owner of your shop", said.TextContent, StringComparison.Ordinal);
        Assert.StartsWith("/records/", said.QuerySelector("a")!.GetAttribute("href"), StringComparison.Ordinal);
        Assert.Null((await (await house.SignedIn("bao")).Get("/next")).QuerySelector("main .said"));
    }

    [Fact]
    public async Task An_owner_who_is_a_technician_too_is_led_to_the_shops_coverage()
    {
        Assert.NotNull((await (await house.SignedIn("leila")).Get("/next")).QuerySelector("main a[href='/coverage']"));
        Assert.Null((await (await house.SignedIn("bao")).Get("/next")).QuerySelector("main a[href='/coverage']"));
    }

    [Fact]
    public async Task It_is_for_technicians_alone()
    {
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.SignedIn("tomasz")).Ask("/next")).StatusCode);
        var stranger = await house.Stranger().Ask("/next");
        Assert.Equal(HttpStatusCode.Redirect, stranger.StatusCode);
        Assert.StartsWith("/sign-in", stranger.Headers.Location!.PathAndQuery, StringComparison.Ordinal);
    }
}

using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Records;

[Collection(SharedHouse.Name)]
public sealed class RecordsTests(TrainingHouse house)
{
    [Theory]
    [InlineData("bao", "state-current", "Current")]
    [InlineData("pilar", "state-due", "Due for renewal")]
    [InlineData("dmytro", "state-expired", "Expired")]
    [InlineData("sione", "state-suspended", "Suspended")]
    public async Task A_technician_sees_the_state_of_their_record_in_words(string userName, string style, string word)
    {
        var state = (await (await house.SignedIn(userName)).Get("/records")).QuerySelector(".record-card .state")!;
        Assert.Contains(style, state.ClassList);
        Assert.Equal(word, state.TextContent);
    }

    [Fact]
    public async Task From_ones_records_a_link_leads_to_everything_that_is_held() =>
        Assert.NotNull((await (await house.SignedIn("bao")).Get("/records")).QuerySelector("main a[href='/everything-about-me.json']"));

    [Fact]
    public async Task A_record_shows_its_evidence_and_the_hashes_of_what_was_judged_by()
    {
        var bao = await house.SignedIn("bao");
        var page = await bao.Get(await RecordOf(bao));
        var text = page.QuerySelector("main")!.TextContent;
        Assert.Contains("Renske de Boer", text, StringComparison.Ordinal);
        Assert.Contains("Mateo Quispe", text, StringComparison.Ordinal);
        Assert.Contains("Issued", text, StringComparison.Ordinal);
        Assert.All(page.QuerySelectorAll(".hashes dd"), hash => Assert.Matches("^[0-9a-f]{64}$", hash.TextContent));
        Assert.Contains(page.QuerySelectorAll(".hashes dt"), path => path.TextContent == "procedures/isolate-chassis.yaml");
        foreach (var link in page.QuerySelectorAll("main a")) await bao.Get(link.GetAttribute("href")!);
    }

    [Fact]
    public async Task The_owner_and_an_examiner_see_it_colleagues_and_other_shops_do_not_find_it()
    {
        var record = await RecordOf(await house.SignedIn("bao"));
        foreach (var (userName, status) in new[]
        {
            ("hollis", HttpStatusCode.OK), ("renske", HttpStatusCode.OK),
            ("pilar", HttpStatusCode.NotFound), ("signe", HttpStatusCode.NotFound), ("joao", HttpStatusCode.NotFound),
        })
            Assert.Equal(status, (await (await house.SignedIn(userName)).Ask(record)).StatusCode);
    }

    [Fact]
    public async Task A_newcomer_is_told_that_there_is_none_yet()
    {
        var (visitor, _) = await house.NewTechnician();
        Assert.Contains("You have no record yet", (await visitor.Get("/records")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_id_is_not_found() =>
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("bao")).Ask("/records/nothing")).StatusCode);

    [Fact]
    public async Task A_technician_sees_the_verdict_of_their_own_signed_run_and_nobody_elses()
    {
        var bao = await house.SignedIn("bao");
        var run = (await bao.Get("/records")).QuerySelector("a[href^='/my-runs/']")!.GetAttribute("href")!;
        var page = await bao.Get(run);
        Assert.Contains("A right order", page.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("figure.drawing svg"));
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("pilar")).Ask(run)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("joao")).Ask(run)).StatusCode);
    }

    private static async Task<string> RecordOf(Visitor visitor) =>
        (await visitor.Get("/records")).QuerySelector(".record-card a[href^='/records/']")!.GetAttribute("href")!;
}

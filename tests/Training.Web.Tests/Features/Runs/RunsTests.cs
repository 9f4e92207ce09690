using System.Net;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Runs;

public sealed class RunsTests(ClockedHouse house) : IClassFixture<ClockedHouse>
{
    [Fact]
    public async Task A_run_without_a_chassis_is_not_started_and_what_was_chosen_stays()
    {
        var mateo = await house.SignedIn("mateo");
        var answer = await Start(mateo, "rania", chassis: "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.Equal("Say in up to 80 characters which vehicle it is.", page.QuerySelector("form .wrong")!.TextContent);
        Assert.True(page.QuerySelector<IHtmlInputElement>("input[name=Variant][value=truck-k26]")!.IsChecked);
        Assert.NotNull(page.QuerySelector("details[open] form[action='/runs']"));
    }

    [Fact]
    public async Task The_page_beside_the_vehicle_offers_steps_and_apart_from_them_what_must_not_be_done()
    {
        var (mateo, address) = await Started();
        var page = await mateo.Get(address);
        var lists = page.QuerySelectorAll("ul.taps");
        Assert.Equal(2, lists.Length);
        Assert.NotEmpty(lists[0].QuerySelectorAll(".tap"));
        Assert.All(lists[0].QuerySelectorAll(".tap-row"), row => Assert.DoesNotContain("is-wrong", row.ClassList));
        Assert.All(lists[1].QuerySelectorAll(".tap-row"), row => Assert.Contains("is-wrong", row.ClassList));
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task Without_a_script_each_tap_is_timed_by_the_server_and_can_be_taken_back()
    {
        var (mateo, address) = await Started();
        house.Clock.Pass(TimeSpan.FromSeconds(75));
        var page = await mateo.Get(address);
        var first = page.QuerySelector(".tap")!;
        page = await mateo.Follow(await mateo.Press(first));
        Assert.Contains("01:15", page.QuerySelector(".tapped li")!.TextContent, StringComparison.Ordinal);
        Assert.True(page.QuerySelector<IHtmlButtonElement>(".tap")!.IsDisabled);
        Assert.False(page.QuerySelector(".again")!.HasAttribute("hidden"));

        page = await mateo.Follow(await mateo.Press(page.Button("Take back")));
        Assert.Contains("taken back", page.QuerySelector(".tapped li")!.TextContent, StringComparison.Ordinal);
        Assert.False(page.QuerySelector<IHtmlButtonElement>(".tap")!.IsDisabled);
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task A_page_that_is_sent_twice_taps_once()
    {
        var (mateo, address) = await Started();
        var button = (await mateo.Get(address)).QuerySelector(".tap")!;
        await mateo.Press(button);
        await mateo.Press(button);
        Assert.Single((await mateo.Get(address)).QuerySelectorAll(".tapped li"));
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task A_tap_that_a_script_sends_again_counts_once_and_keeps_the_devices_time()
    {
        var (mateo, address) = await Started();
        house.Clock.Pass(TimeSpan.FromMinutes(10));
        var page = await mateo.Get(address);
        var step = page.QuerySelector(".tap")!.GetAttribute("value")!;
        (string, string)[] tap = [("id", Guid.NewGuid().ToString()), ("step", step), ("seconds", "61.25")];
        for (var time = 0; time < 2; time++)
            Assert.Equal(HttpStatusCode.NoContent, (await mateo.Send($"{address}/taps", page.TokenIn(), tap)).StatusCode);
        Assert.Contains("01:01", Assert.Single((await mateo.Get(address)).QuerySelectorAll(".tapped li")).TextContent, StringComparison.Ordinal);
        await GiveUp(mateo, address);
    }

    [Theory]
    [InlineData("5000", "The tap's time lies ahead of the server's clock; check the device's clock.")]
    [InlineData("0", "A step cannot be done before the one that was tapped before it.")]
    public async Task A_tap_at_an_impossible_time_is_refused_with_a_sentence_for_the_script(string seconds, string sentence)
    {
        var (mateo, address) = await Started();
        house.Clock.Pass(TimeSpan.FromSeconds(30));
        var page = await mateo.Get(address);
        var steps = page.QuerySelectorAll(".tap").Select(button => button.GetAttribute("value")!).ToList();
        await mateo.Send($"{address}/taps", page.TokenIn(), ("id", Guid.NewGuid().ToString()), ("step", steps[0]), ("seconds", "20"));
        var answer = await mateo.Send($"{address}/taps", page.TokenIn(), ("id", Guid.NewGuid().ToString()), ("step", steps[1]), ("seconds", seconds));
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Equal(sentence, problem.RootElement.GetProperty("detail").GetString());
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task A_script_is_told_how_far_the_run_has_come()
    {
        var (mateo, address) = await Started();
        house.Clock.Pass(TimeSpan.FromSeconds(42));
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        request.Headers.Accept.Add(new("application/json"));
        var answer = await mateo.Client.SendAsync(request, TestContext.Current.CancellationToken);
        var told = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).RootElement;
        Assert.Equal(42, told.GetProperty("elapsedSeconds").GetDecimal());
        Assert.True(told.GetProperty("isUnderWay").GetBoolean());
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task Another_examiner_sees_the_run_but_taps_nothing()
    {
        var (mateo, address) = await Started();
        var renske = await house.SignedIn("renske");
        var page = await renske.Get(address);
        Assert.Null(page.QuerySelector(".tap"));
        Assert.Equal(HttpStatusCode.NotFound, (await renske.Post($"{address}/ending", page.TokenIn())).StatusCode);
        Assert.NotNull((await mateo.Get(address)).QuerySelector(".tap"));
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task A_run_that_is_given_up_says_why_and_counts_for_nothing()
    {
        var (mateo, address) = await Started();
        var page = await mateo.Follow(await mateo.Press((await mateo.Get(address)).Button("Give it up"), ("reason", "A fire drill.")));
        Assert.Contains("A fire drill.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Rania", (await mateo.Get("/runs")).QuerySelector("section[aria-labelledby=to-do]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_with_steps_not_tapped_is_ended_only_when_it_was_asked_and_can_go_on()
    {
        var (mateo, address) = await Started();
        var page = await mateo.Follow(await mateo.Press((await mateo.Get(address)).Button("The work is done")));
        Assert.NotEmpty(page.QuerySelectorAll(".not-tapped li"));
        Assert.NotNull((await mateo.Get(page.QuerySelector("a.main-act")!.GetAttribute("href")!)).QuerySelector(".tap"));

        page = await mateo.Follow(await mateo.Press(page.Button("End it as it is")));
        Assert.Null(page.QuerySelector(".tap"));
        Assert.NotEmpty(page.QuerySelectorAll("[data-finding=Missing]"));
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task What_was_taken_back_has_no_number_in_the_order_so_far_and_the_last_tap_is_told_with_its_time()
    {
        var (mateo, address) = await Started();
        var page = await mateo.Get(address);
        Assert.Equal("Nothing tapped yet", page.QuerySelector("[data-since]")!.TextContent);
        var taps = page.QuerySelectorAll(".tap").Take(3).ToList();
        foreach (var (at, tap) in taps.Index())
        {
            house.Clock.Pass(TimeSpan.FromSeconds(10));
            await mateo.Press(tap, ("id", Guid.NewGuid().ToString()));
            if (at == 1) await mateo.Press((await mateo.Get(address)).Button("Take back"));
        }

        page = await mateo.Get(address);
        Assert.Equal(["1", "1", "2"], page.QuerySelectorAll(".tapped li").Select(item => item.GetAttribute("value")));
        Assert.Equal("2", page.QuerySelectorAll(".tap-row")[2].QuerySelector(".place")!.TextContent);
        Assert.Equal("Last tap at 00:30", page.QuerySelector("[data-since]")!.TextContent);
        await GiveUp(mateo, address);
    }

    [Fact]
    public async Task A_right_run_that_is_signed_issues_the_record()
    {
        await using var own = new ClockedHouse();
        var mateo = await own.SignedIn("mateo");
        var started = await Start(mateo, "rania", "K26-7");
        var address = started.Headers.Location!.ToString();
        var page = await mateo.Follow(started);
        // The listing is a right order; of two ways to prove the tester one is enough.
        foreach (var row in page.QuerySelectorAll("ul.taps:first-of-type .tap-row").Where(row => row.GetAttribute("data-row") != "prove-on-unit"))
        {
            own.Clock.Pass(row.QuerySelector("small") is null ? TimeSpan.FromSeconds(20) : TimeSpan.FromMinutes(20));
            var step = row.QuerySelector(".tap")!.GetAttribute("value")!;
            Assert.Equal(HttpStatusCode.Redirect, (await mateo.Post($"{address}/taps", page.TokenIn(), ("id", Guid.NewGuid().ToString()), ("step", step))).StatusCode);
        }

        page = await mateo.Follow(await mateo.Press((await mateo.Get(address)).Button("The work is done")));
        Assert.Equal("", string.Join("; ", page.QuerySelectorAll("[data-finding]").Select(finding => finding.TextContent.Trim())));
        page = await mateo.Follow(await mateo.Press(page.Button("Sign it"), ("note", "Calm and clean.")));
        Assert.Equal("Signed. Everything is shown: the competency record is issued.", page.Said());
        Assert.Contains("Calm and clean.", page.QuerySelector(".pairs")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("(1200 s)", page.QuerySelector("figure.drawing")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("figcaption"));
        var record = page.QuerySelector("a[href^='/records/']")!.GetAttribute("href")!;
        var hollis = await own.SignedIn("hollis");
        Assert.Contains("Current", (await hollis.Get(record)).QuerySelector(".record-card")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task<HttpResponseMessage> Start(Visitor examiner, string name, string chassis)
    {
        var form = (await examiner.Get("/runs")).QuerySelectorAll("li").Where(item => item.QuerySelector("form[action='/runs']") is not null)
            .First(item => item.TextContent.Contains(name, StringComparison.OrdinalIgnoreCase));
        return await examiner.Press(form.QuerySelector("form button")!, ("Variant", "truck-k26"), ("Chassis", chassis));
    }

    private async Task<(Visitor Mateo, string Address)> Started()
    {
        var mateo = await house.SignedIn("mateo");
        // Nobody works at two vehicles at once: what another test left open is given up.
        foreach (var open in (await mateo.Get("/runs")).QuerySelectorAll("section[aria-labelledby=open] a[href^='/runs/']"))
            await GiveUp(mateo, open.GetAttribute("href")!);
        return (mateo, (await Start(mateo, "rania", "K26-7")).Headers.Location!.ToString());
    }

    private static async Task GiveUp(Visitor examiner, string address) =>
        await examiner.Press((await examiner.Get(address)).Button("Give it up"), ("reason", "The test is over."));
}

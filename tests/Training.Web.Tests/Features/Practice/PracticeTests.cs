using System.Net;
using AngleSharp.Html.Dom;
using Training.Sequencing.Answers;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Practice;

[Collection(SharedHouse.Name)]
public sealed class PracticeTests(TrainingHouse house)
{
    private const string Question = "/scenarios/customer-waiting/practice";

    [Fact]
    public async Task A_question_shows_the_situation_and_gives_nothing_away()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(Question);
        Assert.Contains("Larkfield Haulage", page.QuerySelector(".situation")!.TextContent, StringComparison.Ordinal);
        var all = page.DocumentElement.OuterHtml;
        var procedure = (await house.Procedure("isolate-chassis")).Procedure;
        Assert.All(Technicians.SecretsOf(procedure), secret => Assert.DoesNotContain(secret, all, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("decoy", all, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Without_script_a_tap_places_a_step_and_keeps_the_offer_as_it_was_drawn()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(Question);
        var offered = Offered(page);
        page = await Press(visitor, page, offered[3]);
        page = await Press(visitor, page, offered[0]);
        Assert.Equal(offered, Offered(page));
        Assert.Equal([offered[3], offered[0]], Placed(page));
        page = await visitor.Follow(await visitor.Press(page.QuerySelector(".placed button[value='up:2']")!));
        Assert.Equal([offered[0], offered[3]], Placed(page));
        page = await Press(visitor, page, offered[0]);
        Assert.Equal([offered[3]], Placed(page));
    }

    [Fact]
    public async Task A_time_that_is_no_number_is_refused_beside_the_order_which_stays()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await Press(visitor, await visitor.Draw(Question), "wait-empty");
        page = await visitor.BackTo(await visitor.Press(page.Button("Hand in"), ("seconds", "a while")));
        Assert.Contains("write the time as a number of seconds", page.Said(), StringComparison.Ordinal);
        Assert.Equal(["wait-empty"], Placed(page));
        var field = (IHtmlInputElement)page.QuerySelector("#how-long-wait-empty")!;
        Assert.Equal(("a while", "true"), (field.Value, field.GetAttribute("aria-invalid")));
        Assert.True(field.HasAttribute("autofocus"));
        Assert.Contains("write the time as a number", page.GetElementById(field.GetAttribute("aria-describedby")!)!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wait_without_a_time_is_asked_for_at_its_field_and_nothing_is_graded_before()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await Press(visitor, await visitor.Draw(Question), "wait-empty");
        page = await visitor.BackTo(await visitor.Press(page.Button("Hand in")));
        Assert.Contains("no time is written", page.GetElementById("how-long-wait-empty-wrong")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull((await visitor.Follow(await visitor.Press(page.Button("Hand in"), ("seconds", "0")))).QuerySelector(".verdict-word"));
    }

    [Fact]
    public async Task A_question_that_is_loaded_again_is_the_same_with_the_order_so_far()
    {
        var (visitor, _) = await house.NewTechnician();
        var drawn = (await visitor.Ask(Question)).Headers.Location!.ToString();
        var page = await visitor.Get(drawn);
        Assert.Equal(Offered(page), Offered(await visitor.Get(drawn)));
        var changed = (await visitor.Press(page.QuerySelector($".offered button[data-step='{Offered(page)[2]}']")!)).Headers.Location!.ToString();
        var again = await visitor.Get(changed);
        Assert.Equal(Offered(page), Offered(again));
        Assert.Equal([Offered(page)[2]], Placed(again));
    }

    [Fact]
    public async Task A_question_that_is_asked_for_anew_is_drawn_anew()
    {
        var (visitor, _) = await house.NewTechnician();
        Assert.NotEqual((await visitor.Ask(Question)).Headers.Location, (await visitor.Ask(Question)).Headers.Location);
    }

    [Fact]
    public async Task What_the_device_keeps_an_answer_under_is_forgotten_when_it_is_handed_in()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(Question);
        var name = page.QuerySelector("form[data-kept-as]")!.GetAttribute("data-kept-as");
        Assert.NotEqual(name, (await visitor.Draw(Question)).QuerySelector("form[data-kept-as]")!.GetAttribute("data-kept-as"));
        Assert.Equal(name, (await HandIn(visitor, page, await Right())).QuerySelector("[data-handed-in]")!.GetAttribute("data-handed-in"));
    }

    [Fact]
    public async Task Faults_are_numbered_as_they_are_met_and_what_was_left_out_comes_last()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(Question);
        var right = (await Right()).Where(entry => entry.Step.Value is "lock" or "key-out" or "key-off").Reverse().ToList();
        page = await HandIn(visitor, page, right);
        var kinds = page.QuerySelectorAll("[data-finding]").Select(finding => finding.GetAttribute("data-finding")).ToList();
        Assert.NotEqual("Missing", kinds[0]);
        Assert.Equal("Missing", kinds[^1]);
        Assert.Equal(kinds.Count(kind => kind == "Missing"), kinds.AsEnumerable().Reverse().TakeWhile(kind => kind == "Missing").Count());
    }

    [Fact]
    public async Task An_empty_order_is_not_graded()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.BackTo(await visitor.Press((await visitor.Draw(Question)).Button("Hand in")));
        Assert.Contains("Your order is empty", page.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_right_order_is_called_right_and_leads_on_to_the_next_scenario()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await HandIn(visitor, await visitor.Draw(Question), await Right());
        Assert.Contains("A right order", page.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("[data-finding]"));
        Assert.NotNull(page.QuerySelector("figure.drawing svg[role=img]"));
        Assert.StartsWith("Next:", page.QuerySelector("nav a.main-act")!.TextContent.Trim(), StringComparison.Ordinal);
        Assert.Contains(page.QuerySelectorAll("nav a"), link => link.GetAttribute("href") == "/modules/02-shut-down-and-isolate");
        var line = (await visitor.Get("/scenarios")).QuerySelector("a[href^='/scenarios/customer-waiting/']")!;
        Assert.EndsWith("right", line.TextContent.Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_order_is_told_what_was_wrong_and_the_least_that_mends_it()
    {
        var (visitor, _) = await house.NewTechnician();
        var right = (await Right()).ToList();
        var lockAt = right.FindIndex(entry => entry.Step.Value == "lock");
        (right[lockAt], right[0]) = (right[0], right[lockAt]);
        var page = await HandIn(visitor, await visitor.Draw(Question), right);
        Assert.Contains("Not safe", page.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(page.QuerySelectorAll("[data-finding]"), finding => finding.GetAttribute("data-subject") == "lock-open");
        Assert.Contains(page.QuerySelectorAll("section[aria-labelledby$=mend] li"), item => item.TextContent.StartsWith("Move: Put your own lock", StringComparison.Ordinal));
        Assert.Equal("Try again", page.QuerySelector("nav a.main-act")!.TextContent.Trim());
    }

    [Fact]
    public async Task An_answer_that_is_sent_twice_counts_once()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(Question);
        var first = await Post(visitor, page, await Right());
        var second = await Post(visitor, page, await Right());
        Assert.Equal(first.Headers.Location, second.Headers.Location);
    }

    [Fact]
    public async Task A_colleague_does_not_find_somebody_elses_try()
    {
        var (visitor, _) = await house.NewTechnician();
        var tried = (await Post(visitor, await visitor.Draw(Question), await Right())).Headers.Location!.ToString();
        var (colleague, _) = await house.NewTechnician();
        Assert.Equal(HttpStatusCode.NotFound, (await colleague.Ask(tried)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("signe")).Ask(tried)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await (await house.SignedIn("hollis")).Ask(tried)).StatusCode);
    }

    [Fact]
    public async Task A_job_half_done_by_a_colleague_is_finished_from_there()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw("/scenarios/half-isolated-truck/practice?kind=finish");
        Assert.NotEmpty(page.QuerySelectorAll(".placed .done"));
        var answer = await visitor.Press(page.Button("Hand in"), ("step", Offered(page)[0]));
        Assert.NotNull((await visitor.Follow(answer)).QuerySelector(".verdict-word"));
    }

    [Fact]
    public async Task What_is_not_served_is_not_found()
    {
        var (visitor, _) = await house.NewTechnician();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask("/scenarios/nothing/practice")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask("/tries/not-an-id")).StatusCode);
    }

    [Fact]
    public async Task A_form_without_its_token_is_not_read()
    {
        var (visitor, _) = await house.NewTechnician();
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.Post("/scenarios/customer-waiting/tries", null, ("step", "park-brake"))).StatusCode);
    }

    private async Task<IReadOnlyList<Entry>> Right() =>
        Technicians.RightOrder((await house.Procedure("isolate-chassis")).Procedure, new("truck-k26"));

    private static async Task<IHtmlDocument> Press(Visitor visitor, IHtmlDocument page, string step) =>
        await visitor.Follow(await visitor.Press(page.QuerySelector($".offered button[data-step='{step}']")!));

    private static async Task<IHtmlDocument> HandIn(Visitor visitor, IHtmlDocument page, IReadOnlyList<Entry> entries) =>
        await visitor.Follow(await Post(visitor, page, entries));

    private static Task<HttpResponseMessage> Post(Visitor visitor, IHtmlDocument page, IReadOnlyList<Entry> entries) =>
        visitor.Press(page.Button("Hand in"), [.. Answers.Fields(entries)]);

    private static List<string> Offered(IHtmlDocument page) =>
        [.. page.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!)];

    private static IEnumerable<string> Placed(IHtmlDocument page) =>
        page.QuerySelectorAll(".placed [data-placed]").Select(row => row.GetAttribute("data-placed")!);
}

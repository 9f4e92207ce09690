using System.Globalization;
using System.Net;
using AngleSharp.Html.Dom;
using Training.Records;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Papers;

[Collection(SharedHouse.Name)]
public sealed class PapersTests(TrainingHouse house)
{
    private const int Questions = 8;
    private const int LastWithOptions = 6;
    private const int FirstWithOptions = 4;

    [Fact]
    public async Task Before_it_is_begun_a_paper_tells_its_rules_and_shows_no_question()
    {
        var (visitor, person) = await house.NewTechnician();
        var (paper, _) = await house.Admit(person);
        var page = await visitor.Get($"/papers/{paper}");
        Assert.Contains("30 minutes", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("handed in once", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal($"/papers/{paper}", (await visitor.Ask($"/papers/{paper}/questions/1")).Headers.Location!.ToString());
    }

    [Fact]
    public async Task An_open_paper_lists_its_questions_and_says_in_words_when_it_closes()
    {
        var (_, _, page) = await Begun();
        Assert.Equal(Questions, page.QuerySelectorAll("main ol.lines > li").Length);
        Assert.All(page.QuerySelectorAll("main .way-word"), word => Assert.Equal("nothing saved yet", word.TextContent.Trim()));
        Assert.Matches(@"until \d{2}:\d{2} (GMT|BST)", page.QuerySelector("[data-paper-clock]")!.TextContent);
        Assert.InRange(int.Parse(page.QuerySelector("[data-paper-clock]")!.GetAttribute("data-left")!, CultureInfo.InvariantCulture), 1700, 1800);
    }

    [Fact]
    public async Task No_page_of_an_open_paper_is_kept_by_the_browser()
    {
        var (visitor, paper, _) = await Begun();
        foreach (var address in new[] { $"/papers/{paper}", $"/papers/{paper}/questions/1", $"/papers/{paper}/hand-in" })
            Assert.True((await visitor.Ask(address)).Headers.CacheControl!.NoStore, address);
    }

    [Fact]
    public async Task No_page_of_an_open_paper_gives_anything_away()
    {
        var (visitor, paper, _) = await Begun();
        var secrets = new List<string>();
        foreach (var id in new[] { "isolate-chassis", "end-isolation", "remove-batteries", "refit-batteries", "unplug-control-units", "refit-control-units" })
            secrets.AddRange(Technicians.SecretsOf((await house.Procedure(id)).Procedure));
        for (var number = 1; number <= Questions; number++)
        {
            var page = await visitor.Get($"/papers/{paper}/questions/{number}");
            page.HideConsequences();
            var all = page.DocumentElement.OuterHtml;
            Assert.All(secrets, secret => Assert.DoesNotContain(secret, all, StringComparison.OrdinalIgnoreCase));
            Assert.DoesNotContain("decoy", all, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task Options_of_a_paper_differ_in_nothing_but_their_number_and_words()
    {
        var (visitor, paper, _) = await Begun();
        for (var number = FirstWithOptions; number <= LastWithOptions; number++)
            (await visitor.Get($"/papers/{paper}/questions/{number}")).AssertOptionsAreAlike();
    }

    [Fact]
    public async Task Without_script_chosen_options_are_saved_on_the_way_to_the_next_question()
    {
        var (visitor, paper, _) = await Begun();
        var here = $"/papers/{paper}/questions/{FirstWithOptions}";
        var page = await visitor.Get(here);
        var next = await visitor.Press(page.Button($"Question {FirstWithOptions + 1}"), ("option", "2"));
        Assert.Equal($"/papers/{paper}/questions/{FirstWithOptions + 1}", next.Headers.Location!.ToString());
        Assert.Equal(["2"], Chosen(await visitor.Get(here)));
        Assert.Equal("saved", (await visitor.Get($"/papers/{paper}")).QuerySelectorAll("main .way-word")[FirstWithOptions - 1].TextContent.Trim());
    }

    [Fact]
    public async Task A_late_older_choice_never_overwrites_a_newer_one_and_a_foreign_one_is_refused()
    {
        var (visitor, paper, _) = await Begun();
        var here = $"/papers/{paper}/questions/{FirstWithOptions}";
        var token = (await visitor.Get(here)).TokenIn();
        Assert.Equal(HttpStatusCode.OK, (await Choose(visitor, paper, token, "2", 7)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Choose(visitor, paper, token, "1", 6)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Choose(visitor, paper, token, "made-up", 8)).StatusCode);
        Assert.Equal(["2"], Chosen(await visitor.Get(here)));
    }

    [Fact]
    public async Task Without_script_every_tap_is_saved()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var offered = page.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!).ToList();
        page = await visitor.Follow(await visitor.Press(page.QuerySelector($".offered button[data-step='{offered[2]}']")!));
        page = await visitor.Follow(await visitor.Press(page.QuerySelector($".offered button[data-step='{offered[1]}']")!));
        Assert.Equal([offered[2], offered[1]], Placed(page));
        Assert.Equal([offered[2], offered[1]], Placed(await visitor.Get($"/papers/{paper}/questions/1")));
        Assert.Equal("saved, 2 steps", (await visitor.Get($"/papers/{paper}")).QuerySelector("main .way-word")!.TextContent.Trim());
        var next = await visitor.Press(page.Button("Question 2"));
        Assert.Equal($"/papers/{paper}/questions/2", next.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_time_that_is_no_number_keeps_the_order_and_says_what_to_do()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var offered = page.QuerySelector(".offered button[data-step]")!.GetAttribute("data-step")!;
        var answer = await visitor.Press(page.Button("Question 2"), ("step", offered), ("seconds", "soon"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        page = await Visitor.Page(answer);
        Assert.Contains("number of seconds", page.Said(), StringComparison.Ordinal);
        Assert.Equal([offered], Placed(page));
    }

    [Fact]
    public async Task A_quiet_save_is_held_and_a_late_older_one_is_told_that_it_is_late()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var (token, steps) = (page.TokenIn(), page.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!).ToList());
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[1], 7)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[1], 7)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Save(visitor, paper, token, steps[0], 6)).StatusCode);
        Assert.Equal([steps[1]], Placed(await visitor.Get($"/papers/{paper}/questions/1")));
    }

    [Fact]
    public async Task Of_two_pages_at_one_question_the_one_that_is_behind_overwrites_nothing_and_is_told_so()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var (token, steps) = (page.TokenIn(), page.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!).ToList());
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[1], 700)).StatusCode);
        var behind = await Save(visitor, paper, token, steps[0], 900);
        Assert.Equal(HttpStatusCode.Conflict, behind.StatusCode);
        Assert.Contains("\"held\":700", await behind.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal([steps[1]], Placed(await visitor.Get($"/papers/{paper}/questions/1")));
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[0], 901, "700")).StatusCode);
        Assert.Equal([steps[0]], Placed(await visitor.Get($"/papers/{paper}/questions/1")));
    }

    [Fact]
    public async Task A_page_that_did_not_hear_of_its_own_save_goes_on_from_it()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var (token, steps) = (page.TokenIn(), page.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!).ToList());
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[1], 700)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[0], 701, "0,700")).StatusCode);
    }

    [Fact]
    public async Task A_save_of_the_number_that_is_held_is_said_to_be_saved_only_where_it_is_the_same_answer()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var (token, steps) = (page.TokenIn(), page.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!).ToList());
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[1], 1)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await Save(visitor, paper, token, steps[1], 1)).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await Save(visitor, paper, token, steps[0], 1)).StatusCode);
    }

    [Fact]
    public async Task Without_script_a_page_that_is_behind_keeps_what_it_has_and_lets_its_person_choose()
    {
        var (visitor, paper, _) = await Begun();
        var here = $"/papers/{paper}/questions/1";
        var (one, other) = (await visitor.Get(here), await visitor.Get(here));
        var steps = one.QuerySelectorAll(".offered button").Select(button => button.GetAttribute("data-step")!).ToList();
        await visitor.Press(one.QuerySelector($".offered button[data-step='{steps[0]}']")!);
        var answer = await visitor.Press(other.QuerySelector($".offered button[data-step='{steps[1]}']")!);
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.Equal([steps[1]], Placed(page));
        Assert.Contains("Yours is not saved", page.Said(), StringComparison.Ordinal);
        Assert.Equal(here, page.QuerySelector("[data-take-saved]")!.GetAttribute("href"));
        Assert.Equal([steps[0]], Placed(await visitor.Get(here)));
        await visitor.Follow(await visitor.Press(page.Button("Keep mine, the one on this page")));
        Assert.Equal([steps[1]], Placed(await visitor.Get(here)));
    }

    [Fact]
    public async Task A_save_that_lost_its_fields_is_refused_and_an_empty_answer_is_taken()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var (token, step) = (page.TokenIn(), page.QuerySelector(".offered button")!.GetAttribute("data-step")!);
        await Save(visitor, paper, token, step, 1);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await visitor.Send($"/papers/{paper}/answers/1", token, ("saveNumber", "2"), ("madeFrom", "1"))).StatusCode);
        Assert.Equal([step], Placed(await visitor.Get($"/papers/{paper}/questions/1")));
        Assert.Equal(HttpStatusCode.OK, (await visitor.Send($"/papers/{paper}/answers/1", token, ("sheet", "order"), ("saveNumber", "2"), ("madeFrom", "1"))).StatusCode);
        Assert.Empty(Placed(await visitor.Get($"/papers/{paper}/questions/1")));
    }

    [Fact]
    public async Task A_time_that_cannot_be_read_is_told_by_the_words_of_its_step()
    {
        var (visitor, paper, _) = await Begun();
        var page = await visitor.Get($"/papers/{paper}/questions/1");
        var step = page.QuerySelector(".offered button[data-step]")!;
        var answer = await visitor.Send($"/papers/{paper}/answers/1", page.TokenIn(), ("step", step.GetAttribute("data-step")!), ("seconds", "soon"), ("saveNumber", "1"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        using var told = System.Text.Json.JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains(step.QuerySelector(".text")!.TextContent.Trim(), told.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_quiet_save_of_what_is_not_on_offer_is_refused_with_a_sentence()
    {
        var (visitor, paper, page) = await Begun();
        page = await visitor.Get($"/papers/{paper}/questions/1");
        var answer = await Save(visitor, paper, page.TokenIn(), "made-up", 1);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("\"detail\":\"", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_quiet_save_of_a_time_that_is_no_number_names_the_step_in_words()
    {
        var (visitor, paper, page) = await Begun();
        page = await visitor.Get($"/papers/{paper}/questions/1");
        var offer = page.QuerySelector(".offered button[data-step]")!;
        var answer = await visitor.Send($"/papers/{paper}/answers/1", page.TokenIn(), ("step", offer.GetAttribute("data-step")!), ("seconds", "ninety"), ("saveNumber", "3"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var told = System.Text.Json.JsonDocument.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains(offer.QuerySelector(".text")!.TextContent, told.RootElement.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_the_time_runs_lessons_practice_and_verdicts_lead_back_to_the_paper_and_say_why()
    {
        var (visitor, paper, _) = await Begun();
        foreach (var address in new[] { "/modules", "/modules/02-shut-down-and-isolate", "/scenarios", "/scenarios/customer-waiting/practice", "/wall-charts", "/procedures/isolate-chassis/wall-chart" })
        {
            var page = await visitor.Follow(await visitor.Ask(address));
            Assert.Contains("shut while the time of your paper runs", page.Said(), StringComparison.Ordinal);
            Assert.NotNull(page.QuerySelector("[data-paper-clock]"));
        }

        Assert.True((await visitor.Ask("/next")).IsSuccessStatusCode);
    }

    [Fact]
    public async Task Handing_in_asks_once_what_is_missing_shows_the_result_and_cannot_be_undone()
    {
        var (visitor, paper, page) = await Begun();
        var token = (await visitor.Get($"/papers/{paper}/questions/1")).TokenIn();
        page = await visitor.Get($"/papers/{paper}/hand-in");
        Assert.Equal(Questions, page.QuerySelectorAll("main .lines li").Length);
        page = await visitor.Follow(await visitor.Press(page.Button("Hand in for good")));
        Assert.Contains("Not passed", page.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Pass mark", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Gone, (await Save(visitor, paper, token, "park-brake", 99)).StatusCode);
        Assert.True((await visitor.Ask("/modules")).IsSuccessStatusCode);
        var again = await visitor.Follow(await visitor.Post($"/papers/{paper}/hand-in", token));
        Assert.Contains("Not passed", again.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_a_paper_is_handed_in_it_is_said_which_answers_are_not_complete_and_what_they_lack()
    {
        var (visitor, paper, _) = await Begun();
        var (waits, decisions) = (false, false);
        for (var number = 1; number <= Questions; number++)
        {
            var page = await visitor.Get($"/papers/{paper}/questions/{number}");
            var save = page.QuerySelector(".act-bar .main-act")!;
            if (page.QuerySelector("[name=value]") is not null)
            {
                // Volts, a specific gravity, or the difference of two: what fits is saved.
                HttpStatusCode saved = default;
                foreach (var value in new[] { "12", "1.250", "0.020" })
                    if (saved != HttpStatusCode.Redirect) saved = (await visitor.Press(save, ("value", value))).StatusCode;
                Assert.Equal(HttpStatusCode.Redirect, saved);
                decisions |= page.QuerySelector("[name=decision]") is not null;
            }
            else if (page.QuerySelector(".offered [data-wait=yes]") is { } offer)
            {
                await visitor.Press(offer);
                waits = true;
            }
        }

        // Which questions a paper has is drawn by lot: each lack is told just where there is one.
        var told = (await visitor.Get($"/papers/{paper}/hand-in")).QuerySelector("#incomplete")?.TextContent ?? "";
        Assert.Equal(decisions, told.Contains("No decision is chosen.", StringComparison.Ordinal));
        Assert.Equal(waits, told.Contains("no time is written", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_answers_are_shown_to_the_technician_only_once_the_sitting_is_closed()
    {
        var (visitor, person) = await house.NewTechnician();
        var (paper, sitting) = await house.Admit(person);
        await Begin(visitor, paper);
        await visitor.Press((await visitor.Get($"/papers/{paper}/hand-in")).Button("Hand in for good"));
        Assert.Empty((await visitor.Get($"/papers/{paper}")).QuerySelectorAll("[data-finding]"));
        await house.Close(sitting);
        var page = await visitor.Get($"/papers/{paper}");
        Assert.Equal(Questions, page.QuerySelectorAll("details .verdict-word").Length);
        Assert.NotEmpty(page.QuerySelectorAll("[data-finding]"));
        var ids = page.QuerySelectorAll("[id]").Select(part => part.Id).ToList();
        Assert.Equal(ids.Distinct().Count(), ids.Count);
    }

    [Fact]
    public async Task A_paper_that_was_never_begun_lapses_with_its_sitting()
    {
        var (visitor, person) = await house.NewTechnician();
        var (paper, sitting) = await house.Admit(person);
        await house.Close(sitting);
        Assert.Contains("It counts for nothing", (await visitor.Get($"/papers/{paper}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Somebody_elses_paper_is_not_found()
    {
        var (visitor, person) = await house.NewTechnician();
        var (paper, _) = await house.Admit(person);
        var (colleague, _) = await house.NewTechnician();
        var token = (await colleague.Get("/modules/02-shut-down-and-isolate")).TokenIn();
        Assert.Equal(HttpStatusCode.NotFound, (await colleague.Ask($"/papers/{paper}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await (await house.SignedIn("signe")).Ask($"/papers/{paper}")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await Save(colleague, paper, token, "park-brake", 1)).StatusCode);
        await colleague.Post($"/papers/{paper}/beginning", token);
        Assert.NotNull((await visitor.Get($"/papers/{paper}")).Button("Begin the paper"));
    }

    [Fact]
    public async Task A_form_without_its_token_neither_begins_nor_saves_nor_hands_in()
    {
        var (visitor, paper, _) = await Begun();
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.Post($"/papers/{paper}/beginning", null)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.Post($"/papers/{paper}/questions/1", null, ("step", "park-brake"))).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await Save(visitor, paper, null, "park-brake", 1)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await visitor.Post($"/papers/{paper}/hand-in", null)).StatusCode);
        Assert.Equal(Questions, (await visitor.Get($"/papers/{paper}")).QuerySelectorAll("main ol.lines > li").Length);
    }

    private async Task<(Visitor Visitor, PaperId Paper, IHtmlDocument Page)> Begun()
    {
        var (visitor, person) = await house.NewTechnician();
        var (paper, _) = await house.Admit(person);
        return (visitor, paper, await Begin(visitor, paper));
    }

    private static async Task<IHtmlDocument> Begin(Visitor visitor, PaperId paper) =>
        await visitor.Follow(await visitor.Press((await visitor.Get($"/papers/{paper}")).Button("Begin the paper")));

    private static Task<HttpResponseMessage> Choose(Visitor visitor, PaperId paper, string? token, string option, long number) =>
        visitor.Send($"/papers/{paper}/answers/{FirstWithOptions}", token, ("sheet", "options"), ("option", option),
            ("saveNumber", number.ToString(CultureInfo.InvariantCulture)));

    private static IEnumerable<string> Chosen(IHtmlDocument page) =>
        page.QuerySelectorAll("input[name=option]").OfType<IHtmlInputElement>().Where(input => input.IsChecked).Select(input => input.Value);

    private static Task<HttpResponseMessage> Save(Visitor visitor, PaperId paper, string? token, string step, long number, string madeFrom = "0") =>
        visitor.Send($"/papers/{paper}/answers/1", token, ("step", step), ("seconds", ""), ("saveNumber", number.ToString(CultureInfo.InvariantCulture)), ("madeFrom", madeFrom));

    private static IEnumerable<string> Placed(IHtmlDocument page) =>
        page.QuerySelectorAll(".placed [data-placed]").Select(row => row.GetAttribute("data-placed")!);
}

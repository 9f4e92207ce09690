using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Results;

[Collection(SharedHouse.Name)]
public sealed class ResultsTests(TrainingHouse house)
{
    private const string NinetySeconds = "/results/isolate-chassis/rule/ninety-seconds";

    [Fact]
    public async Task A_trainers_first_page_says_what_people_get_wrong_and_leads_to_the_rule()
    {
        var tomasz = await house.SignedIn("tomasz");
        var worst = (await tomasz.Get("/publishing")).QuerySelectorAll("section[aria-labelledby=wrong] a.result-name");
        Assert.NotEmpty(worst);
        var rule = await tomasz.Get(worst[0].GetAttribute("href")!);
        Assert.Contains(" of ", rule.QuerySelector("section[aria-labelledby=all] .share")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_share_has_a_picture_with_its_words()
    {
        var page = await (await house.SignedIn("tomasz")).Get("/results/isolate-chassis");
        var pictures = page.QuerySelectorAll("section[aria-labelledby=rules] .share svg");
        Assert.True(pictures.Length > 10);
        Assert.All(pictures, picture => Assert.Equal(picture.ParentElement!.QuerySelector("span")!.TextContent.Trim(), picture.QuerySelector("desc")!.TextContent));
    }

    [Fact]
    public async Task A_rule_leads_to_the_section_of_the_lesson_that_teaches_it()
    {
        var tomasz = await house.SignedIn("tomasz");
        var link = (await tomasz.Get(NinetySeconds)).QuerySelector("section[aria-labelledby=why] a[href*='#']")!.GetAttribute("href")!;
        var lesson = await tomasz.Get(link.Split('#')[0]);
        Assert.NotNull(lesson.GetElementById(Uri.UnescapeDataString(link.Split('#')[1])));
    }

    [Fact]
    public async Task A_trainer_may_choose_whose_results_are_shown_and_an_owner_sees_the_own_shop()
    {
        var everybody = await (await house.SignedIn("tomasz")).Get("/results/isolate-chassis");
        Assert.True(everybody.QuerySelectorAll("select[name=group] option").Length > 3);
        var own = await (await house.SignedIn("hollis")).Get("/results/isolate-chassis");
        Assert.Null(own.QuerySelector("select[name=group]"));
        Assert.NotEmpty(own.QuerySelectorAll("section[aria-labelledby=rules] svg"));
    }

    [Fact]
    public async Task A_shop_with_few_people_sees_no_numbers()
    {
        var signe = await house.SignedIn("signe");
        var page = await signe.Get("/results/isolate-chassis");
        Assert.Empty(page.QuerySelectorAll("main svg"));
        Assert.Contains("Fewer than five people", page.QuerySelector("section[aria-labelledby=rules]")!.TextContent, StringComparison.Ordinal);
        Assert.Empty((await signe.Get(NinetySeconds)).QuerySelectorAll("main svg"));
    }

    [Fact]
    public async Task What_is_not_there_and_what_is_another_shops_is_not_found()
    {
        var tomasz = await house.SignedIn("tomasz");
        foreach (var address in new[] { "/results/no-such-job", "/results/isolate-chassis/rule/no-such-rule", "/results/isolate-chassis/no-kind/x", "/results/isolate-chassis/orders/0000", "/results/isolate-chassis?group=shop:x", "/paper-results/none" })
            Assert.Equal(HttpStatusCode.NotFound, (await tomasz.Ask(address)).StatusCode);
        var hollis = await house.SignedIn("hollis");
        Assert.Equal(HttpStatusCode.NotFound, (await hollis.Ask("/results/isolate-chassis?group=language:en")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await hollis.Ask("/paper-results/electrical-isolation")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.SignedIn("bao")).Ask("/results")).StatusCode);
    }

    [Fact]
    public async Task The_papers_page_names_its_formulas_and_says_that_a_few_papers_say_little()
    {
        var page = await (await house.SignedIn("renske")).Get("/paper-results/electrical-isolation");
        Assert.Contains("Too few papers", page.QuerySelector("section[aria-labelledby=text-0]")!.TextContent, StringComparison.Ordinal);
        foreach (var source in new[] { "Wilson", "Kuder and Richardson", "point-biserial" })
            Assert.Contains(source, page.QuerySelector("section[aria-labelledby=how]")!.TextContent, StringComparison.Ordinal);
    }
}

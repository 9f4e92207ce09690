using Deque.AxeCore.Playwright;

namespace Training.Browser.Tests;

/// <summary>What holds of every page: it fits the screen, and a machine finds no barrier on it.</summary>
public sealed class PagesTests(OpenHouse house) : IClassFixture<OpenHouse>
{
    public static TheoryData<string?, string> Pages => new()
    {
        { null, "/sign-in" },
        { "amara", "/next" },
        { "amara", "/modules" },
        { "amara", "/modules/03-batteries" },
        { "amara", "/glossary" },
        { "amara", "/wall-charts" },
        { "amara", "/procedures/isolate-chassis/wall-chart" },
        { "amara", "/modules/10-back-to-service" },
        { "amara", "/scenarios" },
        { "amara", "/scenarios/customer-waiting/practice?kind=order" },
        { "bao", "/records" },
        { "bao", "/bench" },
        { "bao", "/bench/voltage-drop?length=2&section=25&copper=20&current=100" },
        { "renske", "/sittings" },
        { "mateo", "/runs" },
        { "hollis", "/coverage" },
        { "hollis", "/jobs" },
        { "hollis", "/reminders" },
        { "amara", "/reminders" },
        { "tomasz", "/statements" },
        { "amara", "/competencies/electrical-isolation" },
        { "hollis", "/people" },
        { "hollis", "/proofs" },
        { "tomasz", "/publishing" },
        { "tomasz", "/revisions" },
        { "tomasz", "/results" },
        { "tomasz", "/results/isolate-chassis" },
        { "tomasz", "/results/isolate-chassis/rule/ninety-seconds" },
        { "hollis", "/results/isolate-chassis" },
        { "ifeoma", "/shops" },
        { "ifeoma", "/people" },
        { "ifeoma", "/signing-key" },
    };

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_page_fits_a_phone_and_has_no_barrier(string? userName, string address)
    {
        var page = await house.Device(Screen.Phone);
        if (userName is not null) await page.SignIn(userName);
        var answer = await page.GotoAsync(address);
        Assert.Equal(200, answer!.Status);
        Assert.False((await page.TitleAsync()).StartsWith('·'), "The page has no title of its own.");
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth"));
        var barriers = (await page.RunAxe()).Violations;
        Assert.True(barriers.Length == 0, string.Join('\n', barriers.Select(barrier =>
            $"{barrier.Id}: {barrier.Help} {string.Join(' ', barrier.Nodes.Select(node => node.Html).Take(3))}")));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task What_is_pressed_is_large_enough_for_a_glove(string? userName, string address)
    {
        var page = await house.Device(Screen.Phone);
        if (userName is not null) await page.SignIn(userName);
        await page.GotoAsync(address);
        var small = await page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll('main button, main a.button, main a.line, main input, main select, main summary')]
              .filter(item => item.type !== 'hidden' && item.getClientRects().length > 0 && !item.classList.contains('unseen'))
              .map(item => item.matches('[type=checkbox], [type=radio]') ? item.closest('label') : item)
              .filter(item => item.getBoundingClientRect().height < 47.5 || item.getBoundingClientRect().width < 47.5)
              .map(item => item.outerHTML.slice(0, 120))
            """);
        Assert.Empty(small);
    }
}

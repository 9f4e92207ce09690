using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Training.Browser.Tests;

/// <summary>What holds of every page: it fits the screen, and a machine finds no barrier on it.</summary>
public sealed class PagesTests(OpenHouse house) : IClassFixture<OpenHouse>
{
    // Every rule is tried; what it found in order is not sent back.
    private static readonly AxeRunOptions OnlyViolations = new() { ResultTypes = [ResultType.Violations] };

    private const string PersonLink = "main a[href^='/people/0']";

    public static TheoryData<string?, string> Pages => new()
    {
        { null, "/sign-in" },
        { "tomasz", "/desk" },
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
        { "hollis", "/people/file" },
        { "bao", "/password" },
        { "tomasz", "/wall-charts" },
        { "tomasz", "/revisions" },
        { "tomasz", "/publishing" },
        { "tomasz", "/packs" },
        { "tomasz", "/results" },
        { "tomasz", "/results/isolate-chassis" },
        { "tomasz", "/results/isolate-chassis/rule/ninety-seconds" },
        { "hollis", "/results/isolate-chassis" },
        { "renske", "/paper-results/electrical-isolation" },
        { "renske", "/agreement" },
        { "ifeoma", "/shops" },
        { "ifeoma", "/people" },
        { "ifeoma", "/signing-key" },
    };

    /// <summary>Pages whose addresses are known only on the spot: where one begins, and the links that lead there, one after the other.</summary>
    public static TheoryData<string, string, string[]> Ways => new()
    {
        { "hollis", "/people", [PersonLink] },
        { "ifeoma", "/people", [PersonLink, "main a[href$='/name-removal']"] },
        { "hollis", "/jobs", ["main a[href^='/jobs/0']"] },
        { "bao", "/records", ["main a[href^='/records/0']"] },
        { "bao", "/records", ["main a[href^='/papers/0']"] },
        { "bao", "/records", ["main a[href^='/my-runs/0']"] },
        { "bao", "/records", ["main a[href^='/tries/0']"] },
        { "mateo", "/runs", ["main a[href^='/runs/0']"] },
        { "renske", "/sittings", ["main a[href^='/sittings/0']"] },
    };

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task A_page_fits_a_phone_has_no_barrier_and_is_large_enough_for_a_glove(string? userName, string address)
    {
        var page = userName is null ? await house.Device(Screen.Phone) : await house.DeviceOf(userName, Screen.Phone);
        await using var device = page.Context;
        var answer = await page.GotoAsync(address);
        Assert.Equal(200, answer!.Status);
        await Suits(page);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task A_page_that_is_reached_by_links_suits_a_phone_too(string userName, string address, string[] links)
    {
        var page = await house.DeviceOf(userName, Screen.Phone);
        await using var device = page.Context;
        await page.GotoAsync(address);
        foreach (var link in links)
        {
            var next = await page.Locator(link).First.GetAttributeAsync("href");
            var answer = await page.GotoAsync(next!);
            Assert.Equal(200, answer!.Status);
        }

        await Suits(page);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_has_the_keyboard_is_never_behind_the_bar_at_the_bottom(bool isPhone)
    {
        var page = await house.DeviceOf("amara", isPhone ? Screen.Phone : Screen.Laptop);
        await using var device = page.Context;
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        await page.GotoAsync("/scenarios/customer-waiting/practice?kind=order");
        var steps = await page.Locator(".offered button").CountAsync();
        Assert.True(steps > 10);
        await page.Locator(".offered button").First.FocusAsync();
        var hidden = new List<string>();
        for (var step = 0; step < steps; step++)
        {
            hidden.AddRange(await page.EvaluateAsync<string[]>("""
                () => {
                  const box = document.activeElement.getBoundingClientRect();
                  const bar = document.querySelector('.act-bar').getBoundingClientRect();
                  return box.bottom > bar.top && !document.activeElement.closest('.act-bar') ? [document.activeElement.textContent.trim()] : [];
                }
                """));
            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Empty(hidden);
    }

    // Coming to a page costs more than looking at it: one visit, and all that is wrong is told.
    private static Task Suits(IPage page) =>
        Assert.MultipleAsync(() => HasATitle(page), () => Fits(page), () => HasNoBarrier(page), () => IsLargeEnough(page));

    private static async Task HasATitle(IPage page) =>
        Assert.False((await page.TitleAsync()).StartsWith('·'), "The page has no title of its own.");

    private static async Task Fits(IPage page) =>
        Assert.Equal(0, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth"));

    private static async Task HasNoBarrier(IPage page)
    {
        var barriers = (await page.RunAxe(OnlyViolations)).Violations;
        Assert.True(barriers.Length == 0, string.Join('\n', barriers.Select(barrier =>
            $"{barrier.Id}: {barrier.Help} {string.Join(' ', barrier.Nodes.Select(node => node.Html).Take(3))}")));
    }

    private static async Task IsLargeEnough(IPage page)
    {
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

using Microsoft.Playwright;
using Training.Records.Demo;

namespace Training.Browser.Tests;

/// <summary>What people do on any page.</summary>
internal static class People
{
    public static async Task SignIn(this IPage page, string userName)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("Your name for signing in").FillAsync(userName);
        await page.GetByLabel("Password").FillAsync(DemoWorld.Password);
        await page.Press("Sign in");
        await page.Leaves("/sign-in");
    }

    /// <summary>Waits until the page is another one: a click is over when the post has begun, and going elsewhere at once would break it off.</summary>
    public static Task Leaves(this IPage page, string part) =>
        page.WaitForURLAsync(address => !address.Contains(part, StringComparison.Ordinal));

    public static Task Reaches(this IPage page, string part) =>
        page.WaitForURLAsync(address => address.Contains(part, StringComparison.Ordinal));

    public static Task Press(this IPage page, string button) =>
        page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).First.ClickAsync();

    public static Task Follow(this IPage page, string link) =>
        page.GetByRole(AriaRole.Link, new() { Name = link }).First.ClickAsync();

    public static Task Sees(this IPage page, string text) =>
        Assertions.Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync(text);

    public static ILocator Offered(this IPage page, string step) => page.Locator($".offered button[data-step='{step}']");
}

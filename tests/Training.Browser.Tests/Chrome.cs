using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Training.Browser.Tests.Chrome))]

namespace Training.Browser.Tests;

/// <summary>The one browser of the run; every device of every house is a context of its own in it.</summary>
public sealed class Chrome : IAsyncLifetime
{
    // The one without windows does the same for half the work.
    private static readonly string[] Places =
        ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private IPlaywright? playwright;

    public IBrowser Browser { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Places.FirstOrDefault(File.Exists)
                ?? throw new FileNotFoundException("Chromium is missing; tests/run.sh installs it."),
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        playwright?.Dispose();
    }
}

using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace Training.Browser.Tests;

/// <summary>The whole server on a port of its own with a fresh demo, and a browser beside it.</summary>
public sealed class OpenHouse : WebApplicationFactory<Program>, IAsyncLifetime
{
    private readonly string data = Directory.CreateTempSubdirectory("training-browser-").FullName;
    private IPlaywright? playwright;
    private IBrowser? browser;

    /// <summary>The server's clock.</summary>
    public ShiftedClock Clock { get; } = new();

    public Uri Address { get; private set; } = new("http://localhost");

    public async ValueTask InitializeAsync()
    {
        UseKestrel(options => options.Listen(IPAddress.Loopback, 0));
        StartServer();
        Address = new(Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Chromium(),
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync"],
        });
    }

    /// <summary>A person with a device of their own.</summary>
    public async Task<IPage> Device(Screen screen, bool script = true)
    {
        var context = await browser!.NewContextAsync(new()
        {
            BaseURL = Address.ToString(),
            ViewportSize = new() { Width = screen.Width, Height = screen.Height },
            JavaScriptEnabled = script,
            HasTouch = screen.Width < 600,
        });
        context.SetDefaultTimeout(15_000);
        return await context.NewPageAsync();
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Development");
        builder.UseSetting("Data:Folder", data);
        builder.ConfigureServices(services => services.AddSingleton<TimeProvider>(Clock));
    }

    public override async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
        await base.DisposeAsync();
        Directory.Delete(data, recursive: true);
        GC.SuppressFinalize(this);
    }

    private static string Chromium() =>
        new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome" }.FirstOrDefault(File.Exists)
        ?? throw new FileNotFoundException("Chromium is missing; tests/run.sh installs it.");
}

/// <summary>The size of a screen in CSS pixels.</summary>
public sealed record Screen(int Width, int Height)
{
    public static Screen Phone { get; } = new(360, 780);

    public static Screen Laptop { get; } = new(1280, 800);

    public override string ToString() => $"{Width} × {Height}";
}

using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Training.Web.Tests.House;

namespace Training.Browser.Tests;

/// <summary>The whole server on a port of its own with a copy of the demo.</summary>
public sealed class OpenHouse(Chrome chrome) : WebApplicationFactory<Program>, IAsyncLifetime
{
    private readonly string data = Directory.CreateTempSubdirectory("training-browser-").FullName;
    private readonly ConcurrentBag<IBrowserContext> devices = [];
    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> signedIn = new();

    /// <summary>The server's clock.</summary>
    public ShiftedClock Clock { get; } = new();

    public Uri Address { get; private set; } = new("http://localhost");

    public ValueTask InitializeAsync()
    {
        UseKestrel(options => options.Listen(IPAddress.Loopback, 0));
        StartServer();
        Address = new(Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
        return ValueTask.CompletedTask;
    }

    /// <summary>A person with a device of their own, on which nobody is signed in.</summary>
    public Task<IPage> Device(Screen screen, bool script = true) => Open(screen, script, null);

    /// <summary>A device on which somebody has signed in before, for tests of what comes after that; they sign in once for them all.</summary>
    public async Task<IPage> DeviceOf(string userName, Screen screen) =>
        await Open(screen, true, await signedIn.GetOrAdd(userName, name => new(() => SignIn(name))).Value);

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        DemoFolder.CopyInto(data);
        DemoFolder.Furnish(builder, data);
        builder.ConfigureServices(services => services.AddSingleton<TimeProvider>(Clock));
    }

    public override async ValueTask DisposeAsync()
    {
        foreach (var device in devices) await device.CloseAsync();
        await base.DisposeAsync();
        Directory.Delete(data, recursive: true);
        GC.SuppressFinalize(this);
    }

    private async Task<IPage> Open(Screen screen, bool script, string? storage)
    {
        var context = await chrome.Browser.NewContextAsync(new()
        {
            BaseURL = Address.ToString(),
            ViewportSize = new() { Width = screen.Width, Height = screen.Height },
            JavaScriptEnabled = script,
            HasTouch = screen.Width < 600,
            StorageState = storage,
        });
        context.SetDefaultTimeout(15_000);
        devices.Add(context);
        return await context.NewPageAsync();
    }

    private async Task<string> SignIn(string userName)
    {
        var page = await Device(Screen.Laptop);
        await using var device = page.Context;
        await page.SignIn(userName);
        return await device.StorageStateAsync();
    }
}

/// <summary>The size of a screen in CSS pixels.</summary>
public sealed record Screen(int Width, int Height)
{
    public static Screen Phone { get; } = new(360, 780);

    public static Screen Laptop { get; } = new(1280, 800);

    public override string ToString() => $"{Width} × {Height}";
}

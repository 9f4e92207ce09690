using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Demo;

namespace Training.Web.Tests.House;

/// <summary>The whole web server, with a clock that tests can put on.</summary>
public sealed class ClockedHouse : IAsyncDisposable
{
    private readonly TrainingHouse house = new();
    private readonly WebApplicationFactory<Program> clocked;

    public ClockedHouse() => clocked = house.WithWebHostBuilder(builder =>
        builder.ConfigureTestServices(services => services.AddSingleton<TimeProvider>(Clock)));

    public MovableClock Clock { get; } = new();

    /// <summary>What the server works with.</summary>
    public IServiceProvider Services => clocked.Services;

    /// <summary>A browser without script in which somebody of the demo is signed in.</summary>
    public async Task<Visitor> SignedIn(string userName)
    {
        var visitor = new Visitor(clocked.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = true }));
        var page = await visitor.Get("/sign-in");
        await visitor.Post("/sign-in", page.TokenIn(), ("UserName", userName), ("Password", DemoWorld.Password));
        return visitor;
    }

    public async ValueTask DisposeAsync()
    {
        await clocked.DisposeAsync();
        await house.DisposeAsync();
    }
}

/// <summary>A clock that stands until it is put on; its timers are real ones, so that the server's own work goes on.</summary>
public sealed class MovableClock : TimeProvider
{
    private long ticks = System.GetUtcNow().UtcTicks;

    public void Pass(TimeSpan time) => Interlocked.Add(ref ticks, time.Ticks);

    public override DateTimeOffset GetUtcNow() => new(Interlocked.Read(ref ticks), TimeSpan.Zero);
}

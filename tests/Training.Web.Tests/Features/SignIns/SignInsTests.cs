using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Accounts;
using Training.Records.Demo;
using Training.Web.Startup;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.SignIns;

/// <summary>Signing in tells nobody who is known, and a new password ends what was signed in with the old one.</summary>
public sealed class SignInsTests : IAsyncLifetime
{
    private readonly TrainingHouse house = new();
    private readonly MovableClock clock = new();
    private readonly Hasher hasher = new();
    private WebApplicationFactory<Program> open = null!;

    public ValueTask InitializeAsync()
    {
        open = house.WithWebHostBuilder(builder => builder.ConfigureTestServices(services => services
            .AddSingleton<TimeProvider>(clock).AddSingleton<IPasswordHasher<Person>>(hasher)));
        return ValueTask.CompletedTask;
    }

    public async ValueTask DisposeAsync()
    {
        await open.DisposeAsync();
        await house.DisposeAsync();
    }

    [Fact]
    public async Task An_unknown_name_is_answered_as_a_known_one_is_and_as_much_is_reckoned()
    {
        var stranger = Stranger();
        var (known, reckoned) = (await Try(stranger, "bao", "not the password"), hasher.Looks);
        var unknown = await Try(stranger, "nobody-at-all", "not the password");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, known.Status);
        Assert.Equal(known, unknown);
        Assert.Equal((1, 2), (reckoned, hasher.Looks));
    }

    [Fact]
    public async Task After_ten_wrong_ones_a_known_and_an_unknown_name_wait_alike()
    {
        var stranger = Stranger();
        var told = new HashSet<(HttpStatusCode, string)>();
        foreach (var name in new[] { "bao", "nobody-at-all" })
        {
            for (var turn = 1; turn <= WrongPasswords.Tries; turn++) told.Add(await Try(stranger, name, "not the password"));
            var reckoned = hasher.Looks;
            told.Add(await Try(stranger, name, DemoWorld.Password));
            Assert.Equal(reckoned, hasher.Looks);
        }

        Assert.Single(told);
        clock.Pass(WrongPasswords.Wait);
        Assert.Equal(HttpStatusCode.Redirect, (await Try(stranger, "bao", DemoWorld.Password)).Status);
    }

    [Fact]
    public async Task Who_tries_from_one_address_locks_nobody_out_at_another()
    {
        var wrong = open.Services.GetRequiredService<WrongPasswords>();
        for (var turn = 1; turn <= WrongPasswords.Tries; turn++) Assert.True(wrong.Try("bao", IPAddress.Parse("192.0.2.1")));
        Assert.False(wrong.Try(" BAO ", IPAddress.Parse("::ffff:192.0.2.1")));
        Assert.True(wrong.Try("bao", IPAddress.Parse("192.0.2.2")));
        for (var turn = 1; turn <= WrongPasswords.Tries; turn++) Assert.True(wrong.Try("bao", IPAddress.Parse($"2001:db8::{turn}")));
        Assert.False(wrong.Try("bao", IPAddress.Parse("2001:db8::ffff")));
        Assert.True(wrong.Try("bao", IPAddress.Parse("2001:db8:0:1::1")));
        Assert.Equal(HttpStatusCode.Redirect, (await Try(Stranger(), "bao", DemoWorld.Password)).Status);
    }

    [Fact]
    public async Task After_a_right_password_the_tries_begin_anew()
    {
        var stranger = Stranger();
        for (var round = 1; round <= 2; round++)
        {
            for (var turn = 1; turn < WrongPasswords.Tries; turn++) await Try(stranger, "bao", "not the password");
            Assert.Equal(HttpStatusCode.Redirect, (await Try(Stranger(), "bao", DemoWorld.Password)).Status);
        }
    }

    [Fact]
    public async Task An_account_is_shut_after_a_hundred_wrong_ones_from_anywhere_and_says_nothing_of_it()
    {
        var stranger = Stranger();
        await With(async users =>
        {
            var bao = (await users.FindByNameAsync("bao"))!;
            for (var turn = 1; turn < 100; turn++) await users.AccessFailedAsync(bao);
            Assert.False(await users.IsLockedOutAsync(bao));
        });
        var told = await Try(stranger, "bao", "not the password");
        await With(async users => Assert.True(await users.IsLockedOutAsync((await users.FindByNameAsync("bao"))!)));
        var reckoned = hasher.Looks;
        Assert.Equal(told, await Try(stranger, "bao", DemoWorld.Password));
        Assert.Equal(reckoned + 1, hasher.Looks);
    }

    [Fact]
    public async Task A_new_password_ends_every_other_sign_in_at_once_and_not_the_one_that_chose_it()
    {
        var (here, there) = (await SignedIn("bao"), await SignedIn("bao"));
        var page = await here.Get("/password");
        await here.Post("/password", page.TokenIn(), ("Current", DemoWorld.Password), ("Chosen", "another one at dawn"), ("Again", "another one at dawn"));
        Assert.Equal(HttpStatusCode.OK, (await here.Ask("/next")).StatusCode);
        AssertSignedOut(await there.Ask("/next"));
    }

    [Fact]
    public async Task A_one_time_password_and_the_removal_of_a_name_end_every_sign_in_at_once()
    {
        var (bao, pilar, ifeoma) = (await SignedIn("bao"), await SignedIn("pilar"), await SignedIn("ifeoma"));
        var token = (await ifeoma.Get("/password")).TokenIn();
        await ifeoma.Post($"/people/{await IdOf("bao")}/password", token);
        AssertSignedOut(await bao.Ask("/next"));
        await ifeoma.Post($"/people/{await IdOf("pilar")}/name-removal", token, ("sure", "yes"));
        AssertSignedOut(await pilar.Ask("/next"));
        Assert.Equal(HttpStatusCode.OK, (await ifeoma.Ask("/people")).StatusCode);
    }

    private static void AssertSignedOut(HttpResponseMessage answer) => Assert.StartsWith("/sign-in", answer.Headers.Location?.PathAndQuery, StringComparison.Ordinal);

    private Visitor Stranger() => new(open.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = true }));

    private async Task<Visitor> SignedIn(string name)
    {
        var visitor = Stranger();
        Assert.Equal(HttpStatusCode.Redirect, (await Try(visitor, name, DemoWorld.Password)).Status);
        return visitor;
    }

    private static async Task<(HttpStatusCode Status, string Said)> Try(Visitor visitor, string name, string password)
    {
        var answer = await visitor.Post("/sign-in", (await visitor.Get("/sign-in")).TokenIn(), ("UserName", name), ("Password", password));
        return (answer.StatusCode, (await Visitor.Page(answer)).QuerySelector("#wrong")?.TextContent ?? "");
    }

    private async Task<string> IdOf(string name)
    {
        var id = "";
        await With(async users => id = (await users.FindByNameAsync(name))!.Id.ToString());
        return id;
    }

    private async Task With(Func<UserManager<Person>, Task> act)
    {
        await using var scope = open.Services.CreateAsyncScope();
        await act(scope.ServiceProvider.GetRequiredService<UserManager<Person>>());
    }

    /// <summary>Counts how often a password is looked at: what takes the time.</summary>
    private sealed class Hasher : IPasswordHasher<Person>
    {
        private readonly PasswordHasher<Person> inner = new();

        public int Looks { get; private set; }

        public string HashPassword(Person user, string password) => inner.HashPassword(user, password);

        public PasswordVerificationResult VerifyHashedPassword(Person user, string hashedPassword, string providedPassword)
        {
            Looks++;
            return inner.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}

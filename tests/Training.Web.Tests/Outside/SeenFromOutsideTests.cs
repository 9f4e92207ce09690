using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Demo;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Outside;

/// <summary>The house behind a proxy with TLS on the same machine.</summary>
public sealed class SeenFromOutsideTests(SeenFromOutsideTests.Houses houses) : IClassFixture<SeenFromOutsideTests.Houses>
{
    private const string Outside = "training.example.org";

    /// <summary>One house with the address that it is reached by, and one without.</summary>
    public sealed class Houses : IDisposable
    {
        private readonly TrainingHouse house = new();

        internal WebApplicationFactory<Program> Named { get; }

        internal WebApplicationFactory<Program> Unnamed { get; }

        public Houses()
        {
            Named = house.WithWebHostBuilder(builder => builder.UseEnvironment("Production").UseSetting("Provider:Address", $"https://{Outside}"));
            Unnamed = house.WithWebHostBuilder(builder => builder.UseEnvironment("Production").ConfigureServices(
                services => services.AddSingleton<IStartupFilter, Neighbour>()));
        }

        public void Dispose() => house.Dispose();
    }

    [Fact]
    public async Task Every_cookie_goes_over_TLS_alone()
    {
        var cookies = await CookiesOf(houses.Named);
        Assert.All(cookies, cookie => Assert.Contains("; secure", cookie, StringComparison.Ordinal));
        Assert.Equal(4, cookies.Select(cookie => cookie.Split('=')[0]).Distinct().Count());
    }

    [Fact]
    public async Task A_browser_is_told_to_come_by_TLS_from_then_on()
    {
        var answer = await Ask(houses.Named, Outside, HttpMethod.Get, "/sign-in");
        Assert.Equal("max-age=31536000", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
    }

    [Theory]
    [InlineData(Outside)]
    [InlineData("localhost:5000")]
    public async Task Redirects_lead_to_the_address_from_outside(string host)
    {
        var answer = await Ask(houses.Named, host, HttpMethod.Get, "/next");
        Assert.StartsWith($"https://{Outside}/sign-in?", answer.Headers.Location!.OriginalString, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_host_is_refused() =>
        Assert.Equal(HttpStatusCode.BadRequest, (await Ask(houses.Named, "evil.example", HttpMethod.Get, "/sign-in")).StatusCode);

    [Theory]
    [InlineData("127.0.0.1", true)]
    [InlineData("203.0.113.9", false)]
    public async Task Without_an_address_of_its_own_only_a_proxy_on_the_same_machine_is_believed_that_it_has_TLS(string from, bool isBelieved)
    {
        var cookies = await CookiesOf(houses.Unnamed, ("X-Forwarded-Proto", "https"), (Neighbour.Header, from));
        Assert.All(cookies, cookie => Assert.Equal(isBelieved, cookie.Contains("; secure", StringComparison.Ordinal)));
    }

    /// <summary>Every cookie that is set while a trainer chooses a language, signs in and does something that is refused.</summary>
    private static async Task<IReadOnlyList<string>> CookiesOf(WebApplicationFactory<Program> house, params (string Name, string Value)[] headers)
    {
        List<string> set = [];
        var page = await Visitor.Page(await Step(HttpMethod.Get, "/sign-in"));
        await Step(HttpMethod.Post, "/language", ("form-token", page.TokenIn()), ("language", "en"), ("back", "/"));
        await Step(HttpMethod.Post, "/sign-in", ("form-token", page.TokenIn()), ("UserName", "tomasz"), ("Password", DemoWorld.Password));
        page = await Visitor.Page(await Step(HttpMethod.Get, "/desk"));
        await Step(HttpMethod.Post, "/desk/drafts/new", ("form-token", page.TokenIn()), ("sort", "Procedure"), ("name", "no name"), ("title", ""));
        return set;

        async Task<HttpResponseMessage> Step(HttpMethod method, string path, params (string Name, string Value)[] fields)
        {
            var cookies = string.Join("; ", set.Select(cookie => cookie.Split(';')[0]));
            var answer = await Ask(house, Outside, method, path, fields, [.. headers, ("Cookie", cookies)]);
            Assert.True((int)answer.StatusCode < 400, $"{path}: {answer.StatusCode}");
            // One that is taken away again is no cookie.
            set.AddRange((answer.Headers.TryGetValues("Set-Cookie", out var more) ? more : []).Where(cookie => !cookie.Contains("1970", StringComparison.Ordinal)));
            return answer;
        }
    }

    private static async Task<HttpResponseMessage> Ask(
        WebApplicationFactory<Program> house, string host, HttpMethod method, string path, (string Name, string Value)[]? fields = null, (string Name, string Value)[]? headers = null)
    {
        using var client = house.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = false, BaseAddress = new($"http://{host}") });
        using var request = new HttpRequestMessage(method, path);
        if (method == HttpMethod.Post) request.Content = new FormUrlEncodedContent((fields ?? []).Select(field => KeyValuePair.Create(field.Name, field.Value)));
        foreach (var (name, value) in headers ?? []) request.Headers.TryAddWithoutValidation(name, value);
        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>Whoever asks comes from the address that a header says; a test has no connection.</summary>
    private sealed class Neighbour : IStartupFilter
    {
        public const string Header = "test-comes-from";

        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((context, then) =>
            {
                context.Connection.RemoteIpAddress = IPAddress.Parse(context.Request.Headers[Header].ToString());
                return then();
            });
            next(app);
        };
    }
}

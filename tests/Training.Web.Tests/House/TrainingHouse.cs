using System.Net;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Training.Records.Demo;

namespace Training.Web.Tests.House;

/// <summary>The whole web server on a database of its own, with the content and the people of the demo. It costs a second or more: share one where you can.</summary>
public sealed class TrainingHouse : WebApplicationFactory<Program>
{
    private readonly string data = Directory.CreateTempSubdirectory("training-web-tests-").FullName;

    /// <summary>The folder that holds <c>content/</c>; null for the project's own.</summary>
    public string? ContentRoot { get; init; }

    /// <summary>Whether nobody has ever been here: no people, nothing published.</summary>
    public bool IsNew { get; init; }

    /// <summary>A browser without script in which nobody is signed in. It does not follow redirects by itself.</summary>
    public Visitor Stranger() => new(CreateClient(new() { AllowAutoRedirect = false, HandleCookies = true }));

    /// <summary>A browser without script in which somebody of the demo is signed in.</summary>
    /// <param name="userName">Their name for signing in, such as <c>amara</c>.</param>
    public async Task<Visitor> SignedIn(string userName)
    {
        var visitor = Stranger();
        var page = await visitor.Get("/sign-in");
        var answer = await visitor.Post("/sign-in", page.TokenIn(), ("UserName", userName), ("Password", DemoWorld.Password));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return visitor;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        if (!IsNew) DemoFolder.CopyInto(data);
        DemoFolder.Furnish(builder, data);
        if (ContentRoot is { } root) builder.UseSetting("Content:Root", root);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!disposing) return;
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        if (Directory.Exists(data)) Directory.Delete(data, recursive: true);
    }
}

/// <summary>One house for all tests that only look or add things of their own.</summary>
[CollectionDefinition(Name)]
public sealed class SharedHouse : ICollectionFixture<TrainingHouse>
{
    public const string Name = "the shared house";
}

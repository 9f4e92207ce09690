using System.Net;
using Training.Records.Demo;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Faults;

/// <summary>A form that is larger than its page takes. Only the real server counts what comes in.</summary>
public sealed class LargeFormsTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(60)]
    public async Task A_file_that_is_too_large_is_told_as_that(int megabytes)
    {
        await using var house = new TrainingHouse();
        house.UseKestrel(0);
        house.StartServer();
        house.ClientOptions.AllowAutoRedirect = false;
        var visitor = new Visitor(house.CreateClient());
        await visitor.Post("/sign-in", (await visitor.Get("/sign-in")).TokenIn(), ("UserName", "hollis"), ("Password", DemoWorld.Password));
        using var form = new MultipartFormDataContent
        {
            { new StringContent((await visitor.Get("/people/file")).TokenIn()), "form-token" },
            { new ByteArrayContent(new byte[megabytes << 20]), "File", "people.csv" },
        };
        using var request = new HttpRequestMessage(HttpMethod.Post, "/people/file/look") { Content = form };
        // As curl does: the answer may come before all is sent.
        request.Headers.ExpectContinue = true;
        var answer = await visitor.Client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("too large", (await Visitor.Page(answer)).Said(), StringComparison.Ordinal);
    }
}

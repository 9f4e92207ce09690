using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.PeopleFiles;

[Collection(SharedHouse.Name)]
public sealed class PeopleFilesTests(TrainingHouse house)
{
    [Fact]
    public async Task An_owner_looks_at_a_file_and_takes_all_of_it_in()
    {
        var hollis = await house.SignedIn("hollis");
        var looked = await Visitor.Page(await hollis.Press((await hollis.Get("/people/file")).Button("Look at it"),
            ("Text", "name,sign-in\nNoor Aziz,noor.from.file\nTamsin Reyes,tamsin.reyes\n")));
        var added = await hollis.Press(looked.Button("Add these 2 people"));
        Assert.Equal(HttpStatusCode.OK, added.StatusCode);
        var page = await Visitor.Page(added);
        Assert.Equal(2, page.QuerySelectorAll(".given-password").Length);

        var noor = house.Stranger();
        await noor.Post("/sign-in", (await noor.Get("/sign-in")).TokenIn(), ("UserName", "noor.from.file"), ("Password", page.QuerySelector(".given-password")!.TextContent));
        Assert.Equal("/password", (await noor.Ask("/next")).Headers.Location!.ToString());
    }

    [Fact]
    public async Task What_is_wrong_is_said_at_its_line_and_what_was_typed_stays()
    {
        var hollis = await house.SignedIn("hollis");
        var answer = await hollis.Press((await hollis.Get("/people/file")).Button("Look at it"), ("Text", "name,sign-in\nBao Again,bao\n"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.Page(answer);
        Assert.Contains("Line 2", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Bao Again", page.QuerySelector("textarea#Text")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll("button"), button => button.TextContent.StartsWith("Add", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_table_of_records_is_given_as_a_file_of_the_own_shop_alone()
    {
        var answer = await (await house.SignedIn("hollis")).Ask("/people/records.csv");
        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("Bao Nguyen", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Teixeira", text, StringComparison.Ordinal);
    }
}

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
    public async Task Whoever_presses_twice_sees_the_same_passwords()
    {
        var hollis = await house.SignedIn("hollis");
        var looked = await Visitor.Page(await hollis.Press((await hollis.Get("/people/file")).Button("Look at it"),
            ("Text", "name,sign-in\nTwice One,twice.one\nTwice Two,twice.two\n")));
        var presses = await Task.WhenAll(hollis.Press(looked.Button("Add these 2 people")), hollis.Press(looked.Button("Add these 2 people")));
        var pages = await Task.WhenAll(presses.Append(await hollis.Press(looked.Button("Add these 2 people"))).Select(Visitor.Page));
        var passwords = pages.Select(page => page.QuerySelectorAll(".given-password").Select(password => password.TextContent).ToList()).ToList();
        Assert.All(passwords, shown => Assert.Equal(2, shown.Count));
        Assert.All(passwords, shown => Assert.Equal(passwords[0], shown));
    }

    [Fact]
    public async Task Somebody_elses_form_with_the_same_key_shows_them_nothing()
    {
        var hollis = await house.SignedIn("hollis");
        var looked = await Visitor.Page(await hollis.Press((await hollis.Get("/people/file")).Button("Look at it"), ("Text", "name,sign-in\nKept Close,kept.close\n")));
        await hollis.Press(looked.Button("Add this person"));
        var leila = await house.SignedIn("leila");
        var page = await leila.Get("/people/file");
        var fields = looked.Button("Add this person").Closest("form")!.QuerySelectorAll("input[name], textarea[name]")
            .Where(field => field.GetAttribute("name") != "form-token")
            .Select(field => (field.GetAttribute("name")!, field.GetAttribute("value") ?? field.TextContent));
        var answer = await leila.Post("/people/file", page.TokenIn(), [.. fields]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Empty((await Visitor.Page(answer)).QuerySelectorAll(".given-password"));
    }

    [Fact]
    public async Task What_is_wrong_on_a_line_is_said_in_the_readers_language()
    {
        var (visitor, _) = await house.NewOwner();
        await visitor.Post("/language", (await visitor.Get("/people/file")).TokenIn(), ("language", "es"), ("back", "/people/file"));
        var answer = await visitor.Press((await visitor.Get("/people/file")).Button("Mirarlo"), ("Text", "name,sign-in\n,nobody.here\n"));
        Assert.Contains("Línea 2: Un nombre", (await Visitor.Page(answer)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
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

using System.Net;
using System.Text;
using AngleSharp.Html.Dom;
using Microsoft.Extensions.DependencyInjection;
using Training.Content.Packing;
using Training.Records.Publishing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Packs;

public sealed class PacksTests(TrainingHouse house) : IClassFixture<TrainingHouse>
{
    [Fact]
    public async Task A_trainer_takes_a_module_out_and_it_brings_nothing_where_it_came_from()
    {
        var tomasz = await house.SignedIn("tomasz");
        var bytes = await (await tomasz.Ask("/packs/content.zip?modules=11-electric-chassis-awareness")).Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        var pack = Pack.Read(bytes).Value;
        Assert.Equal("Eastvale Training Centre", pack.Note.MadeBy);
        Assert.Contains(pack.Files, file => file.Path == "procedures/stop-and-call.yaml");
        var page = await Look(tomasz, bytes, HttpStatusCode.OK);
        Assert.Contains("brings nothing that is not here", page.QuerySelector("#brings")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("form[action='/packs/drafts']"));
    }

    [Fact]
    public async Task What_differs_becomes_a_draft_and_nothing_is_published()
    {
        var tomasz = await house.SignedIn("tomasz");
        var served = house.Services.GetRequiredService<Library>().Current.Number;
        var pack = Pack.Read(await (await tomasz.Ask("/packs/content.zip?modules=03-batteries")).Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Value;
        var changed = Pack.Of(
            [.. pack.Files.Select(file => file.Path == "competencies/batteries.yaml" ? file with { Text = file.Text.Replace("P24M", "P12M", StringComparison.Ordinal) } : file)],
            "Somebody else", "Ask us", ["03-batteries"]);
        var page = await Look(tomasz, changed.Write(), HttpStatusCode.OK);
        var brings = page.QuerySelector("section[aria-labelledby=brings]")!;
        Assert.Contains("Somebody else", brings.TextContent, StringComparison.Ordinal);
        Assert.Equal("competencies/batteries.yaml", Assert.Single(brings.QuerySelectorAll("details summary code")).TextContent);
        Assert.Contains("valid-for", brings.QuerySelector(".changes code")!.TextContent, StringComparison.Ordinal);
        var desk = await tomasz.Follow(await tomasz.Press(page.Button("Make drafts of them")));
        Assert.Contains("Drafts on the desk now: 1.", desk.Said(), StringComparison.Ordinal);
        Assert.Contains(desk.QuerySelectorAll("a.line"), line => line.TextContent.Contains("competencies/batteries.yaml", StringComparison.Ordinal));
        Assert.Equal(served, house.Services.GetRequiredService<Library>().Current.Number);
        var again = await tomasz.Follow(await tomasz.Press(page.Button("Make drafts of them")));
        Assert.Contains("brings nothing that is not here", again.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_pack_is_refused_with_a_sentence()
    {
        var page = await Look(await house.SignedIn("tomasz"), Encoding.UTF8.GetBytes("no pack at all"), HttpStatusCode.UnprocessableEntity);
        Assert.Contains("This is no pack", page.Said(), StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("#brings"));
    }

    [Fact]
    public async Task Without_a_module_or_a_file_or_a_pack_that_was_looked_at_there_is_a_sentence()
    {
        var tomasz = await house.SignedIn("tomasz");
        Assert.Contains("at least one module", (await tomasz.Follow(await tomasz.Ask("/packs/content.zip"))).Said(), StringComparison.Ordinal);
        Assert.Contains("There is no module “99-none”", (await tomasz.Follow(await tomasz.Ask("/packs/content.zip?modules=99-none"))).Said(), StringComparison.Ordinal);
        var token = (await tomasz.Get("/packs")).TokenIn();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await tomasz.Post("/packs/look", token)).StatusCode);
    }

    [Fact]
    public async Task Whoever_is_no_trainer_does_not_come_in()
    {
        var renske = await house.SignedIn("renske");
        Assert.Equal(HttpStatusCode.Forbidden, (await renske.Ask("/packs")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await renske.Ask("/packs/content.zip?modules=03-batteries")).StatusCode);
    }

    private static async Task<IHtmlDocument> Look(Visitor visitor, byte[] bytes, HttpStatusCode expected)
    {
        var token = (await visitor.Get("/packs")).TokenIn();
        using var form = new MultipartFormDataContent { { new StringContent(token), "form-token" }, { new ByteArrayContent(bytes), "file", "content.zip" } };
        var answer = await visitor.Client.PostAsync("/packs/look", form);
        Assert.Equal(expected, answer.StatusCode);
        return await Visitor.Page(answer);
    }
}

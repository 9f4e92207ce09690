using System.Net;
using AngleSharp.Html.Dom;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.ProofFiles;

[Collection(SharedHouse.Name)]
public sealed class ProofFilesTests(TrainingHouse house)
{
    [Fact]
    public async Task A_customer_takes_a_file_away_and_checks_it_with_what_everybody_can_read()
    {
        var stranger = house.Stranger();
        var link = await Made("Bao Nguyen");
        var page = await stranger.Get(link);
        Assert.Contains("how to check it yourself", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var file = await Bytes(stranger, page.QuerySelector("a[href$='pack.json']")!.GetAttribute("href")!);
        var pack = ProofPack.Read(StrictJson.ReadObject(file).Value).Value;
        var credential = await Bytes(stranger, page.QuerySelector("a[href*='/credentials/']")!.GetAttribute("href")!);
        var document = await Bytes(stranger, "/.well-known/did.json");
        var keys = DidDocument.Read(document, DidWeb.Parse("did:web:localhost").Value).Value;
        ReadOnlyMemory<byte>[] lists = [await Bytes(stranger, "/status/withdrawn/1"), await Bytes(stranger, "/status/suspended/1")];
        var report = CredentialVerifier.Check(credential, new()
        {
            Now = DateTimeOffset.UtcNow,
            Keys = keys,
            StatusLists = lists,
            Checkpoint = pack.Checkpoint,
            PersonName = "Bao Nguyen",
        });
        Assert.True(report.State == CheckState.Passed, string.Join('\n', report.Results));
    }

    [Fact]
    public async Task The_log_can_be_followed_by_anybody_and_names_nobody()
    {
        var stranger = house.Stranger();
        await stranger.Get(await Made("Bao Nguyen"));
        var newest = await NewestCheckpoint(stranger);
        var checkpoint = SignedCheckpoint.Read(newest).Value.Checkpoint;
        var entry = await Bytes(stranger, $"/log/entries/{checkpoint.Size - 1}?size={checkpoint.Size}");
        var place = LogInclusion.Read(entry).Value;
        Assert.True(place.Proof.Verify(place.Entry.LeafHash, checkpoint.RootHash));
        Assert.NotEmpty(await Bytes(stranger, $"/log/extension?from=1&to={checkpoint.Size}"));
        var export = await Bytes(stranger, "/log/export.jsonl");
        Assert.True(export.AsSpan().IndexOf("Nguyen"u8) < 0);
        var beyond = await stranger.Ask($"/log/entries/999999?size={checkpoint.Size}");
        Assert.Equal(HttpStatusCode.Conflict, beyond.StatusCode);
        Assert.Contains("they count from 0", await beyond.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_link_and_another_record_give_no_file()
    {
        var stranger = house.Stranger();
        var link = await Made("Bao Nguyen");
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Ask("/p/guess/pack.json")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Ask($"{link}/credentials/{Guid.NewGuid()}.json")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Ask("/status/withdrawn/2")).StatusCode);
    }

    /// <summary>The first is signed when the server has started, or with the first file.</summary>
    private async Task<byte[]> NewestCheckpoint(Visitor stranger)
    {
        await Bytes(stranger, await Made("Bao Nguyen") + "/pack.json");
        return await Bytes(stranger, "/log/checkpoint");
    }

    private static async Task<byte[]> Bytes(Visitor visitor, string address)
    {
        var answer = await visitor.Ask(address);
        Assert.True(answer.IsSuccessStatusCode, $"{address}: {(int)answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
        return await answer.Content.ReadAsByteArrayAsync();
    }

    private async Task<string> Made(string name)
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Get("/proofs");
        var ticks = page.QuerySelectorAll("label.tick").Where(label => label.TextContent.Contains(name, StringComparison.Ordinal))
            .Select(label => ("Records", label.QuerySelector("input")!.GetAttribute("value")!));
        var proof = await hollis.Follow(await hollis.Press(page.Button("Make the proof"), [("ForWhom", "Larkfield Haulage"), .. ticks]));
        return new Uri(((IHtmlInputElement)proof.QuerySelector("#link")!).Value).PathAndQuery;
    }
}

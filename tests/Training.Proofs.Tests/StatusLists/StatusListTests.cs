using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.StatusLists;

public sealed class StatusListTests : IDisposable
{
    private static readonly Uri Address = new("https://eastvale.example/status/withdrawn");

    private readonly SigningKey key = Key("first");

    public void Dispose() => key.Dispose();

    [Fact]
    public void A_signed_list_reads_back()
    {
        StatusList list = StatusList.Verify(Signed(_ => { }), Ring(key), Now).Value;
        Assert.Equal(Address, list.Address);
        Assert.Equal(Eastvale, list.Issuer);
        Assert.Equal(StatusPurpose.Revocation, list.Purpose);
        Assert.Equal(Now, list.ValidFrom);
        Assert.Equal(Now.AddDays(7), list.ValidUntil);
        Assert.True(list.Bits[42]);
        Assert.False(list.Bits[43]);
    }

    [Fact]
    public void A_list_that_was_altered_after_signing_is_refused()
    {
        JsonObject document = StrictJson.ReadObject(Signed(_ => { })).Value;
        document["credentialSubject"]!["encodedList"] = StatusBitstring.Of([]).Encode();
        Assert.False(StatusList.Verify(Jcs.Canonicalize(document).Value.Utf8, Ring(key), Now).IsOk);
    }

    [Fact]
    public void A_list_in_another_issuers_name_is_refused() => Refused(list => list["issuer"] = "did:web:other.example");

    [Fact]
    public void A_list_of_another_shape_is_refused_although_its_signature_fits()
    {
        Refused(list => list["type"] = "VerifiableCredential");
        Refused(list => list["@context"] = new JsonArray("https://elsewhere.example"));
        Refused(list => list.Remove("id"));
        Refused(list => list.Remove("validFrom"));
        Refused(list => list["validUntil"] = "soon");
        Refused(list => list["credentialSubject"]!["type"] = "StatusList2021");
        Refused(list => list["credentialSubject"]!["statusPurpose"] = "message");
        Refused(list => list["credentialSubject"]!["statusPurpose"] = new JsonArray("revocation", "suspension"));
        Refused(list => list["credentialSubject"]!["encodedList"] = "uAAAA");
    }

    [Fact]
    public void An_entry_reads_back()
    {
        StatusListEntry entry = new(StatusPurpose.Suspension, Address, 94567);
        Assert.Equal(entry, StatusListEntry.Read(entry.Write()).Value);
        Assert.Equal("https://eastvale.example/status/withdrawn#94567", (string?)entry.Write()["id"]);
    }

    [Theory]
    [InlineData("type", "\"StatusList2021Entry\"")]
    [InlineData("statusPurpose", "\"refresh\"")]
    [InlineData("statusListIndex", "94567")]
    [InlineData("statusListIndex", "\"-1\"")]
    [InlineData("statusListIndex", "\"1e3\"")]
    [InlineData("statusListIndex", "\"99999999999\"")]
    [InlineData("statusListCredential", "\"http://eastvale.example/status\"")]
    [InlineData("statusListCredential", "\"/status\"")]
    [InlineData("statusSize", "2")]
    [InlineData("statusSize", "\"1\"")]
    public void An_entry_of_another_shape_is_refused(string member, string json)
    {
        JsonObject entry = new StatusListEntry(StatusPurpose.Revocation, Address, 1).Write();
        entry[member] = JsonNode.Parse(json);
        Assert.False(StatusListEntry.Read(StrictJson.ReadObject(Jcs.Canonicalize(entry).Value.Utf8).Value).IsOk);
    }

    private void Refused(Action<JsonObject> change) => Assert.False(StatusList.Verify(Signed(change), Ring(key), Now).IsOk);

    private byte[] Signed(Action<JsonObject> change)
    {
        JsonObject document = new StatusList(
            Address, Eastvale, StatusPurpose.Revocation, StatusBitstring.Of([42]), Now, Now.AddDays(7)).Write();
        change(document);
        JsonObject secured = EddsaJcs2022.Secure(document, key, KeyId.For(Eastvale, key.PublicKey), Now).Value;
        return Jcs.Canonicalize(secured).Value.Utf8.ToArray();
    }
}

using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Training.Proofs.Credentials;
using Training.Proofs.StatusLists;

namespace Training.Proofs.Tests.Credentials;

/// <summary>The JSON Schema of the W3C Verifiable Credentials Data Model 2.0 (draft 2020-12).</summary>
public sealed class W3cSchemaTests : IDisposable
{
    private readonly Awards awards = new();

    public void Dispose() => awards.Dispose();

    [Fact]
    public void A_signed_credential_fits() => Assert.True(Fits(Awards.Bytes(awards.Secured())));

    [Fact]
    public void A_credential_with_a_hashed_name_fits() =>
        Assert.True(Fits(Awards.Bytes(awards.Secured(Awards.Credential() with
        {
            Recipient = HashedRecipient.Of(Awards.Person, TestKeys.Salt("a")),
        }))));

    [Fact]
    public void A_signed_status_list_fits() => Assert.True(Fits(awards.List(StatusPurpose.Revocation, [1])));

    [Theory]
    [InlineData("issuer")]
    [InlineData("type")]
    [InlineData("@context")]
    [InlineData("credentialSubject")]
    public void A_credential_without_a_required_member_does_not_fit(string member)
    {
        JsonObject document = awards.Secured();
        document.Remove(member);
        Assert.False(Fits(Awards.Bytes(document)));
    }

    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(SharedReference.Text("vc-2.0-schema.json")));

    private static bool Fits(byte[] document)
    {
        _ = SharedReference.File("vc-2.0-schema.json");
        using JsonDocument parsed = JsonDocument.Parse(document);
        return Schema.Value.Evaluate(parsed.RootElement).IsValid;
    }
}

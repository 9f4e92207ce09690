using Training.Proofs.Signing;

namespace Training.Proofs.Tests.Signing;

public class DidWebTests
{
    // The did:web method specification of the W3C Credentials Community Group, section 3.2.
    [Theory]
    [InlineData("did:web:w3c-ccg.github.io", "https://w3c-ccg.github.io/.well-known/did.json")]
    [InlineData("did:web:w3c-ccg.github.io:user:alice", "https://w3c-ccg.github.io/user/alice/did.json")]
    [InlineData("did:web:example.com%3A3000:user:alice", "https://example.com:3000/user/alice/did.json")]
    public void The_published_examples_lead_to_their_documents(string did, string url)
    {
        DidWeb read = DidWeb.Parse(did).Value;
        Assert.Equal(url, read.DocumentUrl.ToString());
        Assert.Equal(did, read.ToString());
    }

    [Theory]
    [InlineData("did:web:127.0.0.1")]
    [InlineData("did:web:127.1")]
    [InlineData("did:web:2130706433")]
    [InlineData("did:web:0x7f000001")]
    [InlineData("did:web:a.0x7f")]
    [InlineData("did:web:[::1]")]
    [InlineData("did:web:%5B%3A%3A1%5D")]
    public void An_IP_address_is_refused(string did) => Assert.False(DidWeb.Parse(did).IsOk);

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("did:web:")]
    [InlineData("did:key:z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2")]
    [InlineData("did:web:Example.com")]
    [InlineData("did:web:exa mple.com")]
    [InlineData("did:web:example.com/path")]
    [InlineData("did:web:example.com#key")]
    [InlineData("did:web:user@example.com")]
    [InlineData("did:web:example..com")]
    [InlineData("did:web:-example.com")]
    [InlineData("did:web:example.com%3A0")]
    [InlineData("did:web:example.com%3A65536")]
    [InlineData("did:web:example.com%3A443")]
    [InlineData("did:web:example.com%3a3000")]
    [InlineData("did:web:example.com%3A3000%3A1")]
    [InlineData("did:web:example.com::alice")]
    [InlineData("did:web:example.com:..:secret")]
    [InlineData("did:web:example.com:%2e%2e")]
    [InlineData("did:web:example.com:a/b")]
    [InlineData("did:web:exämple.com")]
    public void What_does_not_name_one_place_in_one_spelling_is_refused(string? did) => Assert.False(DidWeb.Parse(did).IsOk);

    [Fact]
    public void Two_identifiers_are_the_same_where_their_texts_are()
    {
        Assert.Equal(DidWeb.Parse("did:web:example.com:a").Value, DidWeb.For("example.com", null, "a").Value);
        Assert.NotEqual(DidWeb.Parse("did:web:example.com:a").Value, DidWeb.For("example.com").Value);
    }

    [Theory]
    [InlineData("did:web:example.com")]
    [InlineData("did:web:example.com#")]
    [InlineData("did:#key")]
    [InlineData("did:web:example.com#a#b")]
    [InlineData("https://example.com#key")]
    [InlineData(null)]
    public void What_does_not_name_a_key_is_refused(string? text) => Assert.False(KeyId.Parse(text).IsOk);

    [Fact]
    public void A_key_is_named_by_its_owner_and_by_itself()
    {
        using SigningKey key = TestKeys.Key("first");
        KeyId id = KeyId.For(TestKeys.Eastvale, key.PublicKey);
        Assert.Equal($"did:web:eastvale.example#{key.PublicKey.Multikey}", id.Value);
        Assert.Equal("did:web:eastvale.example", id.Controller);
        Assert.Equal(id, KeyId.Parse(id.Value).Value);
    }
}

using CsCheck;
using Training.Proofs.Signing;

namespace Training.Proofs.Tests.Signing;

public class MultibaseTests
{
    // W3C Data Integrity EdDSA Cryptosuites 1.0, appendix B.
    private const string W3cPublic = "z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2";
    private const string W3cSecret = "z3u2en7t5LR2WtQH5PfFqMqwVHBeXouLzo6haApm8XHqvjxq";
    private const string W3cSeed = "c96ef9ea10c5e414c471723aff9de72c35fa5b70fae97e8832ecac7d2e2b8ed6";

    [Fact]
    public void The_published_secret_key_is_read_and_gives_the_published_public_key()
    {
        using SigningKey key = SigningKey.FromSecretMultikey(W3cSecret).Value;
        Assert.Equal(W3cSeed, Convert.ToHexStringLower(key.ExportSeed()));
        Assert.Equal(W3cPublic, key.PublicKey.Multikey);
        Assert.Equal(key.PublicKey, Ed25519PublicKey.FromMultikey(W3cPublic).Value);
        Assert.True(key.PublicKey.IsPublishedTestKey);
    }

    [Fact]
    public void A_secret_key_is_not_taken_for_a_public_one_nor_the_other_way_round()
    {
        Assert.False(Ed25519PublicKey.FromMultikey(W3cSecret).IsOk);
        Assert.False(SigningKey.FromSecretMultikey(W3cPublic).IsOk);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("z")]
    [InlineData("6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2")]
    [InlineData("z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ0")]
    [InlineData("z16MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2")]
    [InlineData("z6MkrJVnaZkeFzdQyMZu1cgjg7k1pZZ6pvBQ7XJPt4swbTQ2 ")]
    public void What_is_not_a_Multikey_is_refused(string? text) => Assert.False(Ed25519PublicKey.FromMultikey(text).IsOk);

    [Fact]
    public void A_key_of_another_kind_is_refused()
    {
        string p256 = Multibase.EncodeBase58([0x80, 0x24, .. new byte[33]]);
        Assert.False(Ed25519PublicKey.FromMultikey(p256).IsOk);
    }

    [Fact]
    public void Base58_reads_back_with_its_leading_zeros() =>
        Gen.Byte.Array[0, 80].Sample(data =>
        {
            byte[] padded = [.. new byte[data.Length % 4], .. data];
            Assert.Equal(padded, Multibase.DecodeBase58(Multibase.EncodeBase58(padded)).Value);
        });

    // The base58 document of the Internet Drafts (draft-msporny-base58), test vectors: from memory.
    [Theory]
    [InlineData("48656c6c6f20576f726c6421", "2NEpo7TZRRrLZSi2U")]
    [InlineData("0000287fb4cd", "11233QC4")]
    [InlineData("", "")]
    public void Base58_is_the_usual_one(string hex, string text) =>
        Assert.Equal(text, Base58.Encode(Convert.FromHexString(hex)));

    [Fact]
    public void A_long_base58_text_is_refused_before_it_costs_time() =>
        Assert.False(Base58.Decode(new string('z', Base58.MostCharacters + 1)).IsOk);

    [Theory]
    [InlineData("zAAAA")]
    [InlineData("uAAA=")]
    [InlineData("uA")]
    [InlineData("uAB")]
    [InlineData("uA A")]
    [InlineData("uA+A")]
    [InlineData(null)]
    public void What_is_not_plain_base64url_is_refused(string? text) => Assert.False(Multibase.DecodeBase64Url(text).IsOk);
}

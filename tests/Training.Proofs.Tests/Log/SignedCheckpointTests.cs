using System.Text;
using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Log;
using Training.Proofs.Signing;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.Log;

public sealed class SignedCheckpointTests : IDisposable
{
    private static readonly Checkpoint Told = new("did:web:eastvale.example", 12, MerkleHash.Leaf("root"u8), Now);

    private readonly SigningKey key = Key("first");

    public void Dispose() => key.Dispose();

    [Fact]
    public void A_checkpoint_reads_back_and_holds()
    {
        SignedCheckpoint read = SignedCheckpoint.Read(Signed().Write().Utf8).Value;
        Assert.Equal(Told, read.Verify(Ring(key), Now).Value);
        Assert.Equal(Signed().Write(), read.Write());
    }

    [Fact]
    public void Every_flipped_bit_of_every_byte_is_found()
    {
        byte[] text = Signed().Write().Utf8.ToArray();
        for (int bit = 0; bit < text.Length * 8; bit++)
        {
            byte[] altered = [.. text];
            altered[bit / 8] ^= (byte)(1 << (bit % 8));
            var read = SignedCheckpoint.Read(altered);
            Assert.False(read.IsOk && read.Value.Verify(Ring(key), Now).IsOk, Encoding.UTF8.GetString(altered));
        }
    }

    [Theory]
    [InlineData("type", "\"Checkpoint\"")]
    [InlineData("size", "-1")]
    [InlineData("size", "1.5")]
    [InlineData("size", "\"12\"")]
    [InlineData("rootHash", "\"00\"")]
    [InlineData("time", "\"noon\"")]
    [InlineData("origin", "\"\"")]
    [InlineData("signature", "\"z\"")]
    [InlineData("note", "\"more\"")]
    public void A_checkpoint_of_another_shape_is_refused(string member, string json)
    {
        JsonObject members = StrictJson.ReadObject(Signed().Write().Utf8).Value;
        members[member] = JsonNode.Parse(json);
        Assert.False(SignedCheckpoint.Read(Encoding.UTF8.GetBytes(members.ToJsonString())).IsOk);
    }

    [Fact]
    public void A_checkpoint_holds_by_known_and_good_keys_alone()
    {
        using SigningKey other = Key("other");
        IssuerKey good = new(KeyId.For(Eastvale, key.PublicKey), key.PublicKey);
        Assert.False(Signed().Verify(Ring(other), Now).IsOk);
        Assert.False(Signed().Verify(new([good with { PublicKey = other.PublicKey }]), Now).IsOk);
        Assert.Contains("expired", Signed().Verify(new([good with { Expires = Now }]), Now).Sentence, StringComparison.Ordinal);
        Assert.Contains("revoked", Signed().Verify(new([good with { Revoked = Now }]), Now).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_checkpoint_of_a_time_yet_to_come_is_not_believed() =>
        Assert.False(Signed().Verify(Ring(key), Now.AddHours(-1)).IsOk);

    private SignedCheckpoint Signed() => SignedCheckpoint.Sign(Told, key, KeyId.For(Eastvale, key.PublicKey));
}

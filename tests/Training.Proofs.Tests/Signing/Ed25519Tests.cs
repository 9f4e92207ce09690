using Training.Proofs.Signing;

namespace Training.Proofs.Tests.Signing;

public class Ed25519Tests
{
    // RFC 8032, section 7.1, tests 1 to 3: seed, public key, message, signature.
    public static readonly TheoryData<string, string, string, string> Rfc8032 = new()
    {
        {
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
            "",
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"
        },
        {
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
            "72",
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"
        },
        {
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
            "af82",
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
        },
    };

    [Theory]
    [MemberData(nameof(Rfc8032))]
    public void The_published_keys_give_the_published_signatures(string seed, string publicKey, string message, string signature)
    {
        using SigningKey key = SigningKey.FromSeed(Convert.FromHexString(seed));
        Assert.Equal(publicKey, Convert.ToHexStringLower(key.PublicKey.Bytes));
        Assert.Equal(signature, Convert.ToHexStringLower(key.Sign(Convert.FromHexString(message))));
        Assert.True(key.PublicKey.Verify(Convert.FromHexString(message), Convert.FromHexString(signature)));
    }

    [Theory]
    [MemberData(nameof(Rfc8032))]
    public void The_published_keys_are_refused_for_signing_in_earnest(string seed, string publicKey, string message, string signature)
    {
        _ = (message, signature);
        Assert.False(SigningKey.ForProduction(Convert.FromHexString(seed)).IsOk);
        Assert.True(Ed25519PublicKey.FromBytes(Convert.FromHexString(publicKey)).Value.IsPublishedTestKey);
    }

    [Theory]
    // RFC 8032, section 7.1, tests 1024 and SHA(abc): from memory; the list of published keys was computed from them.
    [InlineData("f5e5767cf153319517630f226876b86c8160cc583bc013744c6bf255f5cc0ee5")]
    [InlineData("833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42")]
    // W3C Data Integrity EdDSA Cryptosuites 1.0, appendix B.
    [InlineData("c96ef9ea10c5e414c471723aff9de72c35fa5b70fae97e8832ecac7d2e2b8ed6")]
    [InlineData("000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f")]
    // Plainly not random.
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000001")]
    [InlineData("0102030405060708010203040506070801020304050607080102030405060708")]
    // Too short.
    [InlineData("9d61b19deffd5a60")]
    public void Other_seeds_that_are_no_secret_are_refused_for_signing_in_earnest(string seed) =>
        Assert.False(SigningKey.ForProduction(Convert.FromHexString(seed)).IsOk);

    [Fact]
    public void A_random_seed_is_taken_for_signing_in_earnest()
    {
        using SigningKey key = SigningKey.ForProduction(TestKeys.Key("any").ExportSeed()).Value;
        Assert.False(key.PublicKey.IsPublishedTestKey);
    }

    [Fact]
    public void A_key_comes_back_from_its_exported_seed()
    {
        using SigningKey key = TestKeys.Key("any");
        using SigningKey again = SigningKey.FromSeed(key.ExportSeed());
        Assert.Equal(key.PublicKey, again.PublicKey);
    }

    [Fact]
    public void A_flipped_bit_of_signature_message_or_key_is_found()
    {
        using SigningKey key = TestKeys.Key("any");
        byte[] message = "connect ground last"u8.ToArray();
        byte[] signature = key.Sign(message);
        for (int bit = 0; bit < signature.Length * 8; bit++)
            Assert.False(key.PublicKey.Verify(message, Flip(signature, bit)));
        for (int bit = 0; bit < message.Length * 8; bit++)
            Assert.False(key.PublicKey.Verify(Flip(message, bit), signature));
        for (int bit = 0; bit < 256; bit++)
        {
            var other = Ed25519PublicKey.FromBytes(Flip(key.PublicKey.Bytes.ToArray(), bit));
            Assert.False(other.IsOk && other.Value.Verify(message, signature));
        }
    }

    [Fact]
    public void A_signature_of_another_length_does_not_fit()
    {
        using SigningKey key = TestKeys.Key("any");
        byte[] signature = key.Sign([]);
        Assert.False(key.PublicKey.Verify([], signature.AsSpan(0, 63)));
        Assert.False(key.PublicKey.Verify([], [.. signature, 0]));
        Assert.False(key.PublicKey.Verify([], []));
    }

    // A key of order 1 would let one signature fit every message.
    [Fact]
    public void A_key_of_small_order_proves_nothing()
    {
        byte[] identity = [1, .. new byte[31]];
        byte[] signature = [1, .. new byte[63]];
        var key = Ed25519PublicKey.FromBytes(identity);
        Assert.False(key.IsOk && key.Value.Verify("any message"u8, signature));
    }

    [Fact]
    public void A_seed_of_another_length_is_a_fault_of_the_calling_code() =>
        Assert.Throws<ArgumentException>(() => SigningKey.FromSeed(new byte[31]));

    private static byte[] Flip(byte[] bytes, int bit)
    {
        byte[] flipped = [.. bytes];
        flipped[bit / 8] ^= (byte)(1 << (bit % 8));
        return flipped;
    }
}

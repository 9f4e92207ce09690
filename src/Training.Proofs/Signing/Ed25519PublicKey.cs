using System.Security.Cryptography;
using NSec.Cryptography;

namespace Training.Proofs.Signing;

/// <summary>The public half of an Ed25519 key (RFC 8032): it can check signatures and nothing else.</summary>
public sealed class Ed25519PublicKey : IEquatable<Ed25519PublicKey>
{
    /// <summary>The length of a key in bytes.</summary>
    public const int Length = 32;

    /// <summary>The length of a signature in bytes.</summary>
    public const int SignatureLength = 64;

    // multicodec ed25519-pub as an unsigned varint; Controlled Identifiers 1.0, section 2.2.2.
    private static readonly byte[] Prefix = [0xed, 0x01];

    private readonly PublicKey key;
    private readonly byte[] bytes;

    private Ed25519PublicKey(PublicKey key, byte[] bytes) => (this.key, this.bytes) = (key, bytes);

    /// <summary>The 32 bytes.</summary>
    public ReadOnlySpan<byte> Bytes => bytes;

    /// <summary>The key as a Multikey: <c>z6Mk…</c>.</summary>
    public string Multikey => Multibase.EncodeBase58([.. Prefix, .. bytes]);

    /// <summary>
    /// Whether the secret half is printed in a public document, so that the whole world can sign with it.
    /// </summary>
    public bool IsPublishedTestKey => PublishedTestKeys.Contains(this);

    /// <summary>Takes 32 bytes.</summary>
    public static Outcome<Ed25519PublicKey> FromBytes(ReadOnlySpan<byte> bytes) =>
        bytes.Length == Length
        && PublicKey.TryImport(SignatureAlgorithm.Ed25519, bytes, KeyBlobFormat.RawPublicKey, out PublicKey? key)
        && key is not null
            ? new Ed25519PublicKey(key, bytes.ToArray())
            : new Refused("These bytes are not an Ed25519 public key.");

    /// <summary>Reads a Multikey; keys of any other kind are refused, and so are secret keys.</summary>
    public static Outcome<Ed25519PublicKey> FromMultikey(string? text)
    {
        Outcome<byte[]> decoded = Multibase.DecodeBase58(text);
        if (!decoded.IsOk)
            return new Refused(decoded.Sentence);
        return decoded.Value.AsSpan().StartsWith(Prefix)
            ? FromBytes(decoded.Value.AsSpan(Prefix.Length))
            : new Refused("The key is not an Ed25519 public key, and no other kind is accepted.");
    }

    /// <summary>Whether a signature is this key's over exactly these bytes.</summary>
    /// <param name="message">What was signed.</param>
    /// <param name="signature">The signature; any length other than 64 bytes does not fit.</param>
    public bool Verify(ReadOnlySpan<byte> message, ReadOnlySpan<byte> signature) =>
        signature.Length == SignatureLength && SignatureAlgorithm.Ed25519.Verify(key, message, signature);

    /// <inheritdoc/>
    public bool Equals(Ed25519PublicKey? other) =>
        other is not null && CryptographicOperations.FixedTimeEquals(bytes, other.bytes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Ed25519PublicKey);

    /// <inheritdoc/>
    public override int GetHashCode() => BitConverter.ToInt32(bytes, 0);

    /// <summary>The Multikey.</summary>
    public override string ToString() => Multikey;
}

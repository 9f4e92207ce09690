using NSec.Cryptography;

namespace Training.Proofs.Signing;

/// <summary>
/// A whole Ed25519 key (RFC 8032). It lives in guarded memory until it is disposed; where it is stored and how it is
/// protected there is the caller's work.
/// </summary>
public sealed class SigningKey : IDisposable
{
    /// <summary>The length of a seed in bytes.</summary>
    public const int SeedLength = 32;

    // multicodec ed25519-priv as an unsigned varint; Controlled Identifiers 1.0, section 2.2.2.
    private static readonly byte[] SecretPrefix = [0x80, 0x26];

    private readonly Key key;

    private SigningKey(Key key)
    {
        this.key = key;
        PublicKey = Ed25519PublicKey.FromBytes(key.Export(KeyBlobFormat.RawPublicKey)).Value;
    }

    /// <summary>The half that may be shown to everyone.</summary>
    public Ed25519PublicKey PublicKey { get; }

    /// <summary>Makes the key that belongs to a seed, for any use, tests included.</summary>
    /// <param name="seed">32 bytes; random ones, or the ones that <see cref="ExportSeed"/> gave.</param>
    /// <exception cref="ArgumentException">Not 32 bytes.</exception>
    public static SigningKey FromSeed(ReadOnlySpan<byte> seed)
    {
        if (seed.Length != SeedLength)
            throw new ArgumentException($"A seed has {SeedLength} bytes, not {seed.Length}.", nameof(seed));
        return new(Key.Import(
            SignatureAlgorithm.Ed25519,
            seed,
            KeyBlobFormat.RawPrivateKey,
            new KeyCreationParameters { ExportPolicy = KeyExportPolicies.AllowPlaintextExport }));
    }

    /// <summary>
    /// Makes a key that is to sign in earnest: refuses seeds that are plainly not random and keys whose secret is
    /// printed in a public document.
    /// </summary>
    public static Outcome<SigningKey> ForProduction(ReadOnlySpan<byte> seed)
    {
        if (seed.Length != SeedLength)
            return new Refused($"A seed has {SeedLength} bytes, this one has {seed.Length}.");
        // Of 32 random bytes about 30 differ; fewer than 16 happens less than once in 10^20 draws.
        if (seed.ToArray().Distinct().Count() < 16)
            return new Refused("The seed is not random: make a new one from a random source.");
        SigningKey made = FromSeed(seed);
        if (!made.PublicKey.IsPublishedTestKey)
            return made;
        made.Dispose();
        return new Refused("This key is printed in public documents, so anyone can sign with it: make a new one.");
    }

    /// <summary>Reads a secret Multikey: <c>z3u2…</c>.</summary>
    public static Outcome<SigningKey> FromSecretMultikey(string? text)
    {
        Outcome<byte[]> decoded = Multibase.DecodeBase58(text);
        return decoded.IsOk && decoded.Value.Length == SecretPrefix.Length + SeedLength
            && decoded.Value.AsSpan().StartsWith(SecretPrefix)
                ? FromSeed(decoded.Value.AsSpan(SecretPrefix.Length))
                : new Refused("The text is not an Ed25519 secret key.");
    }

    /// <summary>Signs bytes; the same bytes always give the same signature.</summary>
    /// <returns>64 bytes.</returns>
    public byte[] Sign(ReadOnlySpan<byte> message) => SignatureAlgorithm.Ed25519.Sign(key, message);

    /// <summary>The 32 secret bytes, unprotected: encrypt them before they are stored, and clear them afterwards.</summary>
    public byte[] ExportSeed() => key.Export(KeyBlobFormat.RawPrivateKey);

    /// <summary>Clears the secret from memory.</summary>
    public void Dispose() => key.Dispose();
}

using System.Buffers;
using System.Security.Cryptography;

namespace Training.Proofs;

/// <summary>A SHA-256 value: 32 bytes (FIPS 180-4). Two digests are compared in constant time.</summary>
public sealed class Sha256Digest : IEquatable<Sha256Digest>
{
    /// <summary>The length in bytes.</summary>
    public const int Length = SHA256.HashSizeInBytes;

    private static readonly SearchValues<char> HexDigits = SearchValues.Create("0123456789abcdef");

    private readonly byte[] bytes;

    private Sha256Digest(byte[] bytes) => this.bytes = bytes;

    /// <summary>The 32 bytes.</summary>
    public ReadOnlySpan<byte> Bytes => bytes;

    /// <summary>The digest of some bytes.</summary>
    public static Sha256Digest Of(ReadOnlySpan<byte> data) => new(SHA256.HashData(data));

    /// <summary>A digest that was computed elsewhere and stored.</summary>
    /// <param name="digest">Exactly 32 bytes.</param>
    /// <exception cref="ArgumentException">Not 32 bytes.</exception>
    public static Sha256Digest FromBytes(ReadOnlySpan<byte> digest) =>
        digest.Length == Length
            ? new(digest.ToArray())
            : throw new ArgumentException($"A SHA-256 value has {Length} bytes, not {digest.Length}.", nameof(digest));

    /// <summary>Reads 64 small hexadecimal digits.</summary>
    public static Outcome<Sha256Digest> Parse(string? hex)
    {
        if (hex is null || hex.Length != 2 * Length || hex.AsSpan().IndexOfAnyExcept(HexDigits) >= 0)
            return new Refused("A SHA-256 value is written as 64 digits from 0-9 and a-f.");
        return new Sha256Digest(Convert.FromHexString(hex));
    }

    /// <inheritdoc/>
    public bool Equals(Sha256Digest? other) =>
        other is not null && CryptographicOperations.FixedTimeEquals(bytes, other.bytes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Sha256Digest);

    /// <inheritdoc/>
    public override int GetHashCode() => BitConverter.ToInt32(bytes, 0);

    /// <summary>64 small hexadecimal digits.</summary>
    public override string ToString() => Convert.ToHexStringLower(bytes);

    /// <summary>Whether two digests are the same.</summary>
    public static bool operator ==(Sha256Digest? left, Sha256Digest? right) => left?.Equals(right) ?? right is null;

    /// <summary>Whether two digests differ.</summary>
    public static bool operator !=(Sha256Digest? left, Sha256Digest? right) => !(left == right);
}

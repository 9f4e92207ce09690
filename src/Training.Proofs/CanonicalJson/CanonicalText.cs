using System.Text;

namespace Training.Proofs.CanonicalJson;

/// <summary>JSON in the one form that RFC 8785 gives it: the same data always has the same bytes.</summary>
public sealed class CanonicalText : IEquatable<CanonicalText>
{
    private readonly byte[] utf8;

    internal CanonicalText(byte[] utf8) => this.utf8 = utf8;

    /// <summary>The bytes, UTF-8.</summary>
    public ReadOnlySpan<byte> Utf8 => utf8;

    /// <summary>The SHA-256 of the bytes.</summary>
    public Sha256Digest Digest => Sha256Digest.Of(utf8);

    /// <inheritdoc/>
    public bool Equals(CanonicalText? other) => other is not null && utf8.AsSpan().SequenceEqual(other.utf8);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as CanonicalText);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = new();
        hash.AddBytes(utf8);
        return hash.ToHashCode();
    }

    /// <summary>The text.</summary>
    public override string ToString() => Encoding.UTF8.GetString(utf8);
}

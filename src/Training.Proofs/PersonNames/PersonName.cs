using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Training.Proofs.PersonNames;

/// <summary>
/// Stands in for a person's name in the log: a hash of the name with a random salt. The name and the salt are kept
/// outside the log. Once both are removed nothing leads from the hash back to the person, and the log still holds.
/// </summary>
public static class PersonName
{
    /// <summary>The least length of a salt in bytes: 128 bits, so that salts are never the same and never guessed.</summary>
    public const int LeastSaltLength = 16;

    private static readonly byte[] Purpose = "training.person-name.v1"u8.ToArray();

    /// <summary>
    /// SHA-256 over the purpose, the salt and the name in UTF-8, each with its length in front as four bytes, the
    /// greatest first: so no two different pairs are hashed alike.
    /// </summary>
    /// <param name="name">The name; spaces around it and the way its accents are coded make no difference.</param>
    /// <param name="salt">Random bytes, at least <see cref="LeastSaltLength"/>, new for each person.</param>
    /// <exception cref="ArgumentException">The salt is too short, or the name is no text.</exception>
    public static Sha256Digest Hash(string name, ReadOnlySpan<byte> salt)
    {
        RequireSalt(salt);
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, Purpose);
        Append(hash, salt);
        Append(hash, Encoding.UTF8.GetBytes(Normalize(name)));
        return Sha256Digest.FromBytes(hash.GetHashAndReset());
    }

    /// <summary>Whether a hash is that of this name with this salt.</summary>
    public static bool Matches(Sha256Digest hash, string name, ReadOnlySpan<byte> salt) => Hash(name, salt) == hash;

    /// <summary>The form in which names are compared: Unicode NFC without spaces around.</summary>
    /// <exception cref="ArgumentException">The name holds half of a surrogate pair.</exception>
    internal static string Normalize(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Normalize(NormalizationForm.FormC).Trim();
    }

    /// <exception cref="ArgumentException">The salt is too short.</exception>
    internal static void RequireSalt(ReadOnlySpan<byte> salt)
    {
        if (salt.Length < LeastSaltLength)
            throw new ArgumentException($"A salt has at least {LeastSaltLength} bytes, not {salt.Length}.", nameof(salt));
    }

    private static void Append(IncrementalHash hash, ReadOnlySpan<byte> part)
    {
        Span<byte> length = stackalloc byte[sizeof(int)];
        BinaryPrimitives.WriteInt32BigEndian(length, part.Length);
        hash.AppendData(length);
        hash.AppendData(part);
    }
}

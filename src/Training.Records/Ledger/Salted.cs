using System.Security.Cryptography;
using System.Text.Json.Nodes;
using Training.Proofs;
using Training.Proofs.CanonicalJson;
using Training.Proofs.PersonNames;

namespace Training.Records.Ledger;

/// <summary>
/// Hashes that bind to the log what must not stand in it. Without its salt a hash leads back to nothing: delete the
/// salt, and what it bound is forgotten while the log still holds.
/// </summary>
internal static class Salted
{
    private const int SaltLength = 32;

    /// <summary>A new salt of 256 random bits; one for each record and one for each note, so that no two hashes are alike.</summary>
    public static byte[] NewSalt() => RandomNumberGenerator.GetBytes(SaltLength);

    /// <summary>A person's name.</summary>
    public static Sha256Digest Name(string name, byte[] salt) => PersonName.Hash(name, salt);

    /// <summary>The shop that a record was issued for.</summary>
    public static Sha256Digest Shop(ShopId shop, byte[] salt) => Of(new() { ["shop"] = shop.ToString() }, salt);

    /// <summary>Who did something to a record, and why.</summary>
    public static Sha256Digest Said(PersonId by, string reason, byte[] salt) =>
        Of(new() { ["by"] = by.ToString(), ["reason"] = reason }, salt);

    private static Sha256Digest Of(JsonObject members, byte[] salt)
    {
        members["salt"] = Convert.ToHexStringLower(salt);
        return Jcs.Canonicalize(members).Value.Digest;
    }
}

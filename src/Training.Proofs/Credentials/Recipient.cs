using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.PersonNames;

namespace Training.Proofs.Credentials;

/// <summary>Whose competency it is: the IdentityObject of Open Badges 3.0.</summary>
public abstract record Recipient
{
    private protected Recipient()
    {
    }

    /// <summary>Whether this is the person of that name.</summary>
    public abstract bool IsFor(string name);

    internal abstract JsonObject Write();

    internal static Outcome<Recipient> Read(JsonObject identity)
    {
        if (identity["hashed"] is not JsonValue hashed || hashed.GetValueKind() is not (JsonValueKind.True or JsonValueKind.False)
            || identity.TextOf("identityHash") is not { Length: > 0 } value)
            return new Refused("The person is not named as Open Badges 3.0 prescribes.");
        if (hashed.GetValueKind() == JsonValueKind.False)
            return new NamedRecipient(value);
        const string Algorithm = "sha256$";
        if (!value.StartsWith(Algorithm, StringComparison.Ordinal) || identity.TextOf("salt") is not { Length: > 0 } salt)
            return new Refused("The hash of the person's name is not a salted SHA-256.");
        Outcome<Sha256Digest> digest = Sha256Digest.Parse(value[Algorithm.Length..]);
        return digest.IsOk ? new HashedRecipient(digest.Value, salt) : new Refused(digest.Sentence);
    }
}

/// <summary>A person whose name everyone may read.</summary>
/// <param name="Name">The name as it is to be shown.</param>
public sealed record NamedRecipient(string Name) : Recipient
{
    /// <inheritdoc/>
    public override bool IsFor(string name) => PersonName.Normalize(name) == PersonName.Normalize(Name);

    internal override JsonObject Write() => new()
    {
        ["type"] = "IdentityObject",
        ["hashed"] = false,
        ["identityHash"] = Name,
        ["identityType"] = "name",
    };
}

/// <summary>
/// A person whose name is recognised by those who know it and told to nobody else: SHA-256 over the name and then
/// the salt, as Open Badges 3.0 prescribes for IdentityHash, so that its verifiers can check it too.
/// </summary>
/// <param name="Hash">The hash.</param>
/// <param name="Salt">The salt, as text.</param>
public sealed record HashedRecipient(Sha256Digest Hash, string Salt) : Recipient
{
    /// <summary>Hashes a name.</summary>
    /// <param name="name">The name.</param>
    /// <param name="salt">Random bytes, at least <see cref="PersonName.LeastSaltLength"/>, new for each credential.</param>
    public static HashedRecipient Of(string name, ReadOnlySpan<byte> salt)
    {
        PersonName.RequireSalt(salt);
        string text = Convert.ToHexStringLower(salt);
        return new(HashOf(name, text), text);
    }

    /// <inheritdoc/>
    public override bool IsFor(string name) => HashOf(name, Salt) == Hash;

    internal override JsonObject Write() => new()
    {
        ["type"] = "IdentityObject",
        ["hashed"] = true,
        ["identityHash"] = $"sha256${Hash}",
        ["identityType"] = "name",
        ["salt"] = Salt,
    };

    private static Sha256Digest HashOf(string name, string salt) =>
        Sha256Digest.Of(Encoding.UTF8.GetBytes(PersonName.Normalize(name) + salt));
}

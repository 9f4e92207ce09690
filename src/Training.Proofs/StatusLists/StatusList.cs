using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.DataIntegrity;
using Training.Proofs.Signing;

namespace Training.Proofs.StatusLists;

/// <summary>A list of states at a certain time, as it is published in a credential of its own.</summary>
/// <param name="Address">Where it is published: the identifier of the status list credential.</param>
/// <param name="Issuer">Who says so.</param>
/// <param name="Purpose">What a set bit means.</param>
/// <param name="Bits">The bits.</param>
/// <param name="ValidFrom">The instant whose states the list tells.</param>
/// <param name="ValidUntil">Until when it may be relied on before it must be fetched anew.</param>
public sealed record StatusList(
    Uri Address, DidWeb Issuer, StatusPurpose Purpose, StatusBitstring Bits, DateTimeOffset ValidFrom, DateTimeOffset ValidUntil)
{
    /// <summary>The type of the credential.</summary>
    public const string CredentialType = "BitstringStatusListCredential";

    /// <summary>The type of its subject.</summary>
    public const string SubjectType = "BitstringStatusList";

    /// <summary>Writes the credential, not signed yet.</summary>
    public JsonObject Write() => new()
    {
        ["@context"] = new JsonArray("https://www.w3.org/ns/credentials/v2"),
        ["id"] = Address.OriginalString,
        ["type"] = new JsonArray("VerifiableCredential", CredentialType),
        ["issuer"] = Issuer.ToString(),
        ["validFrom"] = DateTimeStamp.Format(ValidFrom),
        ["validUntil"] = DateTimeStamp.Format(ValidUntil),
        ["credentialSubject"] = new JsonObject
        {
            ["id"] = $"{Address.OriginalString}#list",
            ["type"] = SubjectType,
            ["statusPurpose"] = StatusListEntry.Word(Purpose),
            ["encodedList"] = Bits.Encode(),
        },
    };

    /// <summary>
    /// Reads a signed status list credential and believes it only where its proof holds and its issuer's own key made it.
    /// </summary>
    /// <param name="utf8">The document as it was fetched.</param>
    /// <param name="keys">The keys that are trusted.</param>
    /// <param name="now">The instant of checking.</param>
    public static Outcome<StatusList> Verify(ReadOnlySpan<byte> utf8, KeyRing keys, DateTimeOffset now)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(utf8);
        if (!read.IsOk)
            return new Refused(read.Sentence);
        Outcome<DataIntegrityProof> proof = EddsaJcs2022.Verify(read.Value, keys, now);
        if (!proof.IsOk)
            return new Refused(proof.Sentence);
        Outcome<StatusList> list = Read(read.Value);
        return list.IsOk && proof.Value.Key.Controller != list.Value.Issuer.ToString()
            ? new Refused("The status list is signed by somebody else than its issuer.")
            : list;
    }

    /// <summary>Reads a status list credential without believing it.</summary>
    /// <param name="utf8">The document as it was fetched.</param>
    public static Outcome<StatusList> Read(ReadOnlySpan<byte> utf8)
    {
        Outcome<JsonObject> read = StrictJson.ReadObject(utf8);
        return read.IsOk ? Read(read.Value) : new Refused(read.Sentence);
    }

    private static Outcome<StatusList> Read(JsonObject credential)
    {
        if (credential["@context"] is not JsonArray contexts || contexts.Count == 0 || contexts[0].AsText() != "https://www.w3.org/ns/credentials/v2"
            || !credential.Names("type", "VerifiableCredential") || !credential.Names("type", CredentialType)
            || credential["credentialSubject"] is not JsonObject subject || subject.TextOf("type") != SubjectType)
            return new Refused("The document is not a status list credential.");
        if (!Uri.TryCreate(credential.TextOf("id"), UriKind.Absolute, out Uri? address))
            return new Refused("The status list does not say its own address.");
        Outcome<DidWeb> issuer = DidWeb.Parse(credential.TextOf("issuer"));
        if (!issuer.IsOk)
            return new Refused($"The status list's issuer is not known: {issuer.Sentence}");
        if (StatusListEntry.ReadPurpose(subject.TextOf("statusPurpose")) is not { } purpose)
            return new Refused("The status list has not the one purpose of revocation or suspension.");
        Outcome<DateTimeOffset> from = DateTimeStamp.Parse(credential.TextOf("validFrom"));
        Outcome<DateTimeOffset> until = DateTimeStamp.Parse(credential.TextOf("validUntil"));
        if (!from.IsOk || !until.IsOk)
            return new Refused("The status list does not say from when and until when it may be relied on.");
        Outcome<StatusBitstring> bits = StatusBitstring.Decode(subject.TextOf("encodedList"));
        return bits.IsOk
            ? new StatusList(address, issuer.Value, purpose, bits.Value, from.Value, until.Value)
            : new Refused(bits.Sentence);
    }
}

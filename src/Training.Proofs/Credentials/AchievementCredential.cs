using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Credentials;

/// <summary>
/// The AchievementCredential of 1EdTech Open Badges 3.0, which is a credential of W3C Verifiable Credentials Data
/// Model 2.0. Only members of those two standards are written.
/// </summary>
public static class AchievementCredential
{
    /// <summary>The first context, of Verifiable Credentials 2.0.</summary>
    public const string CredentialsContext = "https://www.w3.org/ns/credentials/v2";

    /// <summary>The second context, of Open Badges 3.0.</summary>
    public const string BadgesContext = "https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json";

    /// <summary>The JSON Schema that Open Badges 3.0 asks credentials to name.</summary>
    public const string Schema = "https://purl.imsglobal.org/spec/ob/v3p0/schema/json/ob_v3p0_achievementcredential_schema.json";

    // Open Badges 3.0, IdentifierTypeEnum: other kinds of identifiers begin with ext:.
    internal const string ShopIdentifier = "ext:shop";

    /// <summary>Writes a credential, not signed yet.</summary>
    /// <returns>The JSON object, or the first thing that keeps it from being a proper credential.</returns>
    public static Outcome<JsonObject> Write(CompetencyCredential credential)
    {
        ArgumentNullException.ThrowIfNull(credential);
        JsonObject document = new()
        {
            ["@context"] = new JsonArray(CredentialsContext, BadgesContext),
            ["id"] = credential.Id.OriginalString,
            ["type"] = new JsonArray("VerifiableCredential", "AchievementCredential"),
            ["name"] = credential.Title,
            ["issuer"] = Profile(credential.Issuer),
            ["validFrom"] = DateTimeStamp.Format(credential.ValidFrom),
            ["credentialSubject"] = Subject(credential),
            ["credentialSchema"] = new JsonArray(new JsonObject { ["id"] = Schema, ["type"] = "1EdTechJsonSchemaValidator2019" }),
        };
        if (credential.ValidUntil is { } end)
            document["validUntil"] = DateTimeStamp.Format(end);
        if (credential.Status.Count > 0)
            document["credentialStatus"] = new JsonArray([.. credential.Status.Select(entry => entry.Write())]);
        if (EvidenceList.Write(credential) is { Count: > 0 } evidence)
            document["evidence"] = evidence;
        return Objection(credential, document) is { } objection ? new Refused(objection) : document;
    }

    /// <summary>Reads a credential, signed or not, without believing it: <see cref="CredentialVerifier"/> does the checking.</summary>
    /// <returns>The plain data, or everything that is wrong with its shape, in one sentence each.</returns>
    public static Outcome<CompetencyCredential> Read(JsonObject document)
    {
        CredentialShape shape = new(document);
        CompetencyCredential? credential = shape.Read();
        return credential is null || shape.Problems.Count > 0
            ? new Refused(string.Join(" ", shape.Problems))
            : credential;
    }

    /// <summary>What keeps the data from being a credential: whatever a reader would not read back as it was.</summary>
    private static string? Objection(CompetencyCredential credential, JsonObject document)
    {
        if (credential.Log is { } log && !log.SpeaksOf(credential.Id))
            return $"The log entry does not name the record {credential.Id.OriginalString} in its member \"{LogInclusion.RecordMember}\".";
        Outcome<CanonicalText> text = Jcs.Canonicalize(document);
        if (!text.IsOk)
            return text.Sentence;
        Outcome<JsonObject> asSent = StrictJson.ReadObject(text.Value.Utf8);
        if (!asSent.IsOk)
            return asSent.Sentence;
        Outcome<CompetencyCredential> read = Read(asSent.Value);
        return read.IsOk ? null : read.Sentence;
    }

    private static JsonObject Profile(IssuerProfile issuer)
    {
        JsonObject profile = new()
        {
            ["id"] = issuer.Id.ToString(),
            ["type"] = new JsonArray("Profile"),
            ["name"] = issuer.Name,
        };
        if (issuer.Url is { } url)
            profile["url"] = url.OriginalString;
        return profile;
    }

    private static JsonObject Subject(CompetencyCredential credential)
    {
        JsonArray identifiers = [credential.Recipient.Write()];
        if (credential.Shop is { } shop)
        {
            identifiers.Add(new JsonObject
            {
                ["type"] = "IdentityObject",
                ["hashed"] = false,
                ["identityHash"] = shop,
                ["identityType"] = ShopIdentifier,
            });
        }
        return new JsonObject
        {
            ["type"] = new JsonArray("AchievementSubject"),
            ["identifier"] = identifiers,
            ["achievement"] = Achievement(credential.Competency),
        };
    }

    private static JsonObject Achievement(CompetencyDefinition competency)
    {
        JsonObject criteria = new() { ["narrative"] = competency.Criteria };
        if (competency.CriteriaPage is { } page)
            criteria["id"] = page.OriginalString;
        JsonObject achievement = new()
        {
            ["id"] = competency.Id.OriginalString,
            ["type"] = new JsonArray("Achievement"),
            ["achievementType"] = "Competency",
            ["name"] = competency.Title,
            ["description"] = competency.Description,
            ["criteria"] = criteria,
        };
        if (competency.Revision is { } revision)
            achievement["version"] = revision;
        return achievement;
    }
}

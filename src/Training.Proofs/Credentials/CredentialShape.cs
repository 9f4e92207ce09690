using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;

namespace Training.Proofs.Credentials;

/// <summary>
/// Reads a document as an AchievementCredential and gathers everything in which it is none: the required members of
/// Open Badges 3.0 (April 2025) and of Verifiable Credentials 2.0.
/// </summary>
internal sealed class CredentialShape(JsonObject document)
{
    private readonly List<string> problems = [];

    public IReadOnlyList<string> Problems => problems;

    /// <summary>The credential, or null where a required member is missing.</summary>
    public CompetencyCredential? Read()
    {
        Contexts();
        Require(document.Names("type", "VerifiableCredential"), "The type VerifiableCredential is missing.");
        Require(
            document.Names("type", "AchievementCredential") || document.Names("type", "OpenBadgeCredential"),
            "The type AchievementCredential is missing.");
        Uri? id = Address(document, "id", "the credential");
        string? title = Text(document, "name", "the credential");
        IssuerProfile? issuer = Issuer();
        DateTimeOffset? from = Instant("validFrom");
        Require(from is not null, "The credential does not say from when it holds.");
        DateTimeOffset? until = Instant("validUntil");
        Require(until is null || from is null || until >= from, "The credential ends before it begins.");
        (Recipient? recipient, string? shop, CompetencyDefinition? competency) = Subject();
        IReadOnlyList<StatusListEntry> status = Status();
        (IReadOnlyList<JudgedMatter> judged, LogInclusion? log) = Take(EvidenceList.Read(document.OneOrMore("evidence")));
        if (id is null || title is null || issuer is null || from is null || recipient is null || competency is null)
            return null;
        return new CompetencyCredential
        {
            Id = id,
            Title = title,
            Issuer = issuer,
            Recipient = recipient,
            Shop = shop,
            Competency = competency,
            ValidFrom = from.Value,
            ValidUntil = until,
            Status = status,
            Judged = judged ?? [],
            Log = log,
        };
    }

    private void Contexts() => Require(
        document["@context"] is JsonArray contexts && contexts.Count >= 2
        && contexts[0].AsText() == AchievementCredential.CredentialsContext
        && contexts[1].AsText() == AchievementCredential.BadgesContext,
        "The contexts do not begin with those of Verifiable Credentials 2.0 and Open Badges 3.0.");

    private IssuerProfile? Issuer()
    {
        if (document["issuer"] is not JsonObject issuer || !issuer.Names("type", "Profile"))
        {
            problems.Add("The issuer is not described as a Profile.");
            return null;
        }
        Outcome<DidWeb> id = DidWeb.Parse(issuer.TextOf("id"));
        Require(id.IsOk, id.IsOk ? "" : $"The issuer: {id.Sentence}");
        string? name = Text(issuer, "name", "the issuer");
        Uri? url = issuer.ContainsKey("url") ? Address(issuer, "url", "the issuer") : null;
        return id.IsOk && name is not null ? new IssuerProfile(id.Value, name, url) : null;
    }

    private (Recipient? Recipient, string? Shop, CompetencyDefinition? Competency) Subject()
    {
        if (document["credentialSubject"] is not JsonObject subject || !subject.Names("type", "AchievementSubject"))
        {
            problems.Add("The subject is not one AchievementSubject.");
            return default;
        }
        Recipient? recipient = null;
        string? shop = null;
        foreach (JsonNode? node in subject.OneOrMore("identifier"))
        {
            if (node is not JsonObject identity || identity.TextOf("type") != "IdentityObject"
                || identity.TextOf("identityType") is not { Length: > 0 } kind)
            {
                problems.Add("An identifier of the person is not an IdentityObject.");
                continue;
            }
            if (kind == AchievementCredential.ShopIdentifier && shop is null)
                shop = Text(identity, "identityHash", "the shop");
            else if (kind == "name" && recipient is null)
                recipient = Take(Recipient.Read(identity));
            else if (kind is AchievementCredential.ShopIdentifier or "name")
                problems.Add($"The person has more than one identifier of the kind {kind}.");
        }
        Require(recipient is not null, "The credential does not say whose it is.");
        return (recipient, shop, Competency(subject));
    }

    private CompetencyDefinition? Competency(JsonObject subject)
    {
        if (subject["achievement"] is not JsonObject achievement || !achievement.Names("type", "Achievement"))
        {
            problems.Add("The credential names no Achievement.");
            return null;
        }
        Uri? id = Address(achievement, "id", "the achievement");
        string? title = Text(achievement, "name", "the achievement");
        string? description = Text(achievement, "description", "the achievement");
        if (achievement["criteria"] is not JsonObject criteria)
        {
            problems.Add("The achievement has no criteria.");
            return null;
        }
        string? narrative = Text(criteria, "narrative", "the criteria");
        Uri? page = criteria.ContainsKey("id") ? Address(criteria, "id", "the criteria") : null;
        return id is null || title is null || description is null || narrative is null
            ? null
            : new CompetencyDefinition(id, title, description, narrative, page, achievement.TextOf("version"));
    }

    private List<StatusListEntry> Status()
    {
        List<StatusListEntry> status = [];
        foreach (JsonNode? node in document.OneOrMore("credentialStatus"))
        {
            if (node is not JsonObject entry)
                problems.Add("A status entry is not a JSON object.");
            else if (Take(StatusListEntry.Read(entry)) is { } read)
                status.Add(read);
        }
        Require(
            status.DistinctBy(entry => entry.Purpose).Count() == status.Count,
            "The credential has two status entries of one purpose.");
        return status;
    }

    private DateTimeOffset? Instant(string name) => Take(document.InstantOf(name));

    private string? Text(JsonObject members, string name, string whose)
    {
        string? text = members.TextOf(name);
        Require(!string.IsNullOrWhiteSpace(text), $"The member \"{name}\" of {whose} is missing or empty.");
        return string.IsNullOrWhiteSpace(text) ? null : text;
    }

    private Uri? Address(JsonObject members, string name, string whose)
    {
        bool fits = Uri.TryCreate(members.TextOf(name), UriKind.Absolute, out Uri? address)
            && address.Scheme is "https" or "http" or "urn";
        Require(fits, $"The member \"{name}\" of {whose} is not a web address or a URN.");
        return fits ? address : null;
    }

    private T? Take<T>(Outcome<T> outcome)
    {
        if (outcome.IsOk)
            return outcome.Value;
        problems.Add(outcome.Sentence);
        return default;
    }

    private void Require(bool fits, string problem)
    {
        if (!fits)
            problems.Add(problem);
    }
}

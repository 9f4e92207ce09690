using System.Security.Cryptography;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;

namespace Training.Records.Interchange;

/// <summary>
/// Writes statements of IEEE 9274.1.1 (xAPI 2.0). Verbs and activity types are the vocabulary that was published with the
/// standard's forerunner; everything else is named below the provider's own address.
/// </summary>
/// <param name="house">The provider's address, without a slash at its end.</param>
internal sealed class StatementJson(string house)
{
    /// <summary>What a statement says that it is written by.</summary>
    public const string Version = "2.0.0";

    private const string Verbs = "http://adlnet.gov/expapi/verbs/";
    private const string Activities = "http://adlnet.gov/expapi/activities/";

    /// <summary>A statement about an attempt.</summary>
    public JsonObject Statement(Guid id, PersonId person, string verb, JsonObject activity, JsonObject result, Instant at) => new()
    {
        ["id"] = id.ToString(),
        ["version"] = Version,
        ["actor"] = Agent(person),
        ["verb"] = new JsonObject { ["id"] = Verbs + verb, ["display"] = new JsonObject { ["en"] = verb } },
        ["object"] = activity,
        ["result"] = result,
        ["timestamp"] = InstantPattern.ExtendedIso.Format(at),
    };

    /// <summary>Somebody, by their number here and not by their name.</summary>
    public JsonObject Agent(PersonId person) => new()
    {
        ["objectType"] = "Agent",
        ["account"] = new JsonObject { ["homePage"] = house, ["name"] = person.ToString() },
    };

    /// <summary>An activity of a well-known type.</summary>
    public JsonObject Activity(string path, string type, string name) => new()
    {
        ["objectType"] = "Activity",
        ["id"] = $"{house}/{path}",
        ["definition"] = new JsonObject { ["type"] = Activities + type, ["name"] = new JsonObject { ["en"] = name } },
    };

    /// <summary>A question as an interaction.</summary>
    public JsonObject Interaction(string path, string name, string interaction, IReadOnlyList<string> right)
    {
        var activity = Activity(path, "cmi.interaction", name);
        var definition = activity["definition"]!.AsObject();
        definition["interactionType"] = interaction;
        if (right.Count > 0) definition["correctResponsesPattern"] = new JsonArray([.. right.Select(order => JsonValue.Create(order))]);
        return activity;
    }

    /// <summary>What came of it. The score is from 0 to 100.</summary>
    public static JsonObject Result(decimal? score, bool success, string? response = null, Duration? took = null)
    {
        JsonObject result = new() { ["success"] = success, ["completion"] = true };
        if (score is { } points) result["score"] = new JsonObject { ["scaled"] = points / 100, ["raw"] = points, ["min"] = 0m, ["max"] = 100m };
        if (response is not null) result["response"] = response;
        if (took is { } time) result["duration"] = Length(time);
        return result;
    }

    /// <summary>A list of ids as a response has it.</summary>
    public static string Joined(IEnumerable<string> ids) => string.Join("[,]", ids);

    /// <summary>A length of time as ISO 8601 writes it, to the hundredth of a second.</summary>
    public static string Length(Duration time) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"PT{Math.Round((decimal)time.TotalSeconds, 2):0.##}S");

    /// <summary>The id of a part of an attempt: the same part always has the same. A version-8 UUID (RFC 9562 §5.8) of a hash.</summary>
    public static Guid PartOf(Guid attempt, int number)
    {
        Span<byte> of = stackalloc byte[20];
        attempt.TryWriteBytes(of, bigEndian: true, out _);
        System.Buffers.Binary.BinaryPrimitives.WriteInt32BigEndian(of[16..], number);
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(of, hash);
        hash[6] = (byte)((hash[6] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new(hash[..16], bigEndian: true);
    }
}

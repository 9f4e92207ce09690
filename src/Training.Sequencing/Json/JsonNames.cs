using System.Text.Json;

namespace Training.Sequencing.Json;

/// <summary>The names in a verdict's JSON, encoded once: a verdict of twenty steps writes some hundreds of them.</summary>
internal static class JsonNames
{
    public static readonly JsonEncodedText Accepted = JsonEncodedText.Encode("accepted");

    public static readonly JsonEncodedText Add = JsonEncodedText.Encode("add");

    public static readonly JsonEncodedText Cost = JsonEncodedText.Encode("cost");

    public static readonly JsonEncodedText Drop = JsonEncodedText.Encode("drop");

    public static readonly JsonEncodedText EndsAt = JsonEncodedText.Encode("endsAt");

    public static readonly JsonEncodedText Facts = JsonEncodedText.Encode("facts");

    public static readonly JsonEncodedText Findings = JsonEncodedText.Encode("findings");

    public static readonly JsonEncodedText Harm = JsonEncodedText.Encode("harm");

    public static readonly JsonEncodedText Kept = JsonEncodedText.Encode("kept");

    public static readonly JsonEncodedText Kind = JsonEncodedText.Encode("kind");

    public static readonly JsonEncodedText Mend = JsonEncodedText.Encode("mend");

    public static readonly JsonEncodedText Message = JsonEncodedText.Encode("message");

    public static readonly JsonEncodedText Moves = JsonEncodedText.Encode("moves");

    public static readonly JsonEncodedText Nearest = JsonEncodedText.Encode("nearest");

    public static readonly JsonEncodedText Place = JsonEncodedText.Encode("place");

    public static readonly JsonEncodedText Places = JsonEncodedText.Encode("places");

    public static readonly JsonEncodedText Replay = JsonEncodedText.Encode("replay");

    public static readonly JsonEncodedText Rule = JsonEncodedText.Encode("rule");

    public static readonly JsonEncodedText Safe = JsonEncodedText.Encode("safe");

    public static readonly JsonEncodedText Score = JsonEncodedText.Encode("score");

    public static readonly JsonEncodedText Seconds = JsonEncodedText.Encode("seconds");

    public static readonly JsonEncodedText Severity = JsonEncodedText.Encode("severity");

    public static readonly JsonEncodedText StartsAt = JsonEncodedText.Encode("startsAt");

    public static readonly JsonEncodedText Step = JsonEncodedText.Encode("step");

    public static readonly JsonEncodedText Steps = JsonEncodedText.Encode("steps");

    public static readonly JsonEncodedText Waits = JsonEncodedText.Encode("waits");
}

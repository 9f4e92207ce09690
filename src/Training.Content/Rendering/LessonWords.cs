namespace Training.Content.Rendering;

/// <summary>
/// The few words that a lesson's own blocks bring along. The signal words are those of ANSI Z535.4 and ISO 3864-2 and
/// their usual Spanish and Hindi ones.
/// </summary>
internal sealed record LessonWords(string Danger, string Warning, string Caution, string Notice)
{
    public required string Reading { get; init; }

    public required string Do { get; init; }

    public required string Never { get; init; }

    public required string OneOf { get; init; }

    public required string Optional { get; init; }

    public required string Source { get; init; }

    private static readonly LessonWords English = new("Danger", "Warning", "Caution", "Notice")
    {
        Reading = "Worked example",
        Do = "Do",
        Never = "Never",
        OneOf = "One of these:",
        Optional = "if needed",
        Source = "Source",
    };

    private static readonly LessonWords Spanish = new("Peligro", "Advertencia", "Precaución", "Aviso")
    {
        Reading = "Ejemplo resuelto",
        Do = "Haga",
        Never = "Nunca",
        OneOf = "Una de estas:",
        Optional = "si hace falta",
        Source = "Fuente",
    };

    private static readonly LessonWords Hindi = new("ख़तरा", "चेतावनी", "सावधानी", "सूचना")
    {
        Reading = "हल किया हुआ उदाहरण",
        Do = "करें",
        Never = "कभी नहीं",
        OneOf = "इनमें से एक:",
        Optional = "ज़रूरत हो तो",
        Source = "स्रोत",
    };

    /// <summary>The words in a language; in English where we have none.</summary>
    public static LessonWords In(string language) => language.Split('-')[0].ToLowerInvariant() switch
    {
        "es" => Spanish,
        "hi" => Hindi,
        _ => English,
    };

    public string Of(OwnBlock block) => block switch
    {
        OwnBlock.Danger => Danger,
        OwnBlock.Warning => Warning,
        OwnBlock.Caution => Caution,
        OwnBlock.Notice => Notice,
        _ => Reading,
    };
}

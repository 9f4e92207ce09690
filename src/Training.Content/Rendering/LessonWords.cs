namespace Training.Content.Rendering;

/// <summary>
/// The few words that a lesson's own blocks bring along, and a wall chart as well. The signal words are those of ANSI
/// Z535.4 and ISO 3864-2 and their usual Spanish and Hindi ones.
/// </summary>
/// <param name="Danger">Somebody will be killed or badly hurt.</param>
/// <param name="Warning">Somebody can be killed or badly hurt.</param>
/// <param name="Caution">Somebody can be hurt a little.</param>
/// <param name="Notice">Something can be damaged.</param>
public sealed record LessonWords(string Danger, string Warning, string Caution, string Notice)
{
    /// <summary>What stands over a worked reading.</summary>
    public required string Reading { get; init; }

    /// <summary>What stands over what is to be done.</summary>
    public required string Do { get; init; }

    /// <summary>What stands over what must never be done.</summary>
    public required string Never { get; init; }

    /// <summary>What stands before the several ways of a step.</summary>
    public required string OneOf { get; init; }

    /// <summary>What stands behind a step that may be left out.</summary>
    public required string Optional { get; init; }

    /// <summary>What a mark is called that leads to a source.</summary>
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
    /// <param name="language">The language, such as <c>es</c>.</param>
    public static LessonWords In(string language) => language.Split('-')[0].ToLowerInvariant() switch
    {
        "es" => Spanish,
        "hi" => Hindi,
        _ => English,
    };

    internal string Of(OwnBlock block) => block switch
    {
        OwnBlock.Danger => Danger,
        OwnBlock.Warning => Warning,
        OwnBlock.Caution => Caution,
        OwnBlock.Notice => Notice,
        _ => Reading,
    };
}

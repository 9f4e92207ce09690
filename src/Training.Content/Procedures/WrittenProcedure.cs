using Training.Sequencing.Procedures;

namespace Training.Content.Procedures;

/// <summary>A procedure with the file that it was read from and its texts in other languages.</summary>
/// <param name="Procedure">The procedure in the default language.</param>
/// <param name="File">The file that it was read from; its hash names the revision that an answer was judged by.</param>
public sealed record WrittenProcedure(Procedure Procedure, ContentFile File)
{
    /// <summary>The procedure's name.</summary>
    public ProcedureId Id => Procedure.Id;

    /// <summary>The same procedure with texts in other languages: the same ids, rules and times.</summary>
    public IReadOnlyList<TranslatedProcedure> Translations { get; init; } = [];

    /// <summary>The procedure with its texts in a language; where there are none, in the default language.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public Procedure In(string language) => Translations.FirstOrDefault(translation =>
        string.Equals(translation.Language, language, StringComparison.OrdinalIgnoreCase))?.Procedure ?? Procedure;
}

/// <summary>A procedure whose texts are in another language.</summary>
/// <param name="Language">The language, such as <c>es</c>.</param>
/// <param name="Procedure">The procedure: all but the texts is that of the default language.</param>
/// <param name="File">The file of the texts.</param>
public sealed record TranslatedProcedure(string Language, Procedure Procedure, ContentFile File);

using Training.Content.Writing;

namespace Training.Web.Features.Shared;

/// <summary>A procedure as sentences, as the form shows it.</summary>
/// <param name="Parts">Its parts.</param>
/// <param name="Address">Where an edit is sent.</param>
public sealed record ProcedureFormView(FormParts Parts, string Address)
{
    /// <summary>The form of a file; null where the file is no procedure or no YAML, or so long that nobody would find a sentence.</summary>
    /// <param name="path">Where it stands.</param>
    /// <param name="text">Its text.</param>
    /// <param name="address">Where an edit is sent.</param>
    public static ProcedureFormView? Of(string path, string text, string address)
    {
        ArgumentNullException.ThrowIfNull(path);
        // A translation holds texts alone, which are as easily written in the text.
        if (!path.StartsWith("procedures/", StringComparison.Ordinal) || path.Count(letter => letter == '.') != 1) return null;
        return ProcedureForm.Read(text) is { } parts && !DraftCheck.IsTooLong(parts.Steps.Count + parts.Decoys.Count, parts.Rules.Count) ? new(parts, address) : null;
    }

    /// <summary>The harms that can be chosen.</summary>
    public static IReadOnlyList<string> Harms { get; } = ["people", "equipment", "environment", "work"];

    /// <summary>How bad it can be.</summary>
    public static IReadOnlyList<string> Severities { get; } = ["critical", "serious", "minor"];

    /// <summary>Every fact with every value, as <c>fact=value</c>.</summary>
    public IEnumerable<string> FactValues => Parts.Facts.SelectMany(fact => fact.Values.Select(value => $"{fact.Id}={value}"));

    /// <summary>The names of several steps.</summary>
    /// <param name="ids">Their ids.</param>
    public string NamesOf(IEnumerable<string> ids) => string.Join(", ", ids.Select(id => $"“{Parts.NameOf(id)}”"));
}

namespace Training.Measures.Sources;

/// <summary>Where a number or a rule comes from, fit to be printed beside it.</summary>
/// <param name="Name">The document, or what the number is called in the trade.</param>
/// <param name="Where">The place in it: a table, a paragraph, a section.</param>
/// <param name="Kind">How far it can be relied on.</param>
/// <param name="Note">What a reader must know before quoting it, or null.</param>
public sealed record Source(string Name, string Where, SourceKind Kind, Phrase? Note = null)
{
    /// <summary>One line for the page: the document, the place and, where it is not published, just that.</summary>
    public override string ToString()
    {
        var place = Where.Length == 0 ? Name : $"{Name}, {Where}";
        return Kind switch
        {
            SourceKind.Practice => $"{place} (common practice, no published source)",
            SourceKind.Memory => $"{place} (from memory)",
            _ => Note is null ? place : $"{place} ({Note})",
        };
    }
}

namespace Training.Content.Glossary;

/// <summary>The name of a term, the same in every language.</summary>
/// <param name="Value">The text of the id, compared exactly.</param>
public readonly record struct TermId(string Value)
{
    /// <inheritdoc/>
    public override string ToString() => Value;
}

/// <summary>A word of the trade in one language.</summary>
/// <param name="Id">Its name, by which lessons link to it: <c>[isolator](glossary:isolator)</c>.</param>
/// <param name="Language">The language that it is in.</param>
/// <param name="Word">The word.</param>
/// <param name="Meaning">What it means, in one plain sentence.</param>
public sealed record Term(TermId Id, string Language, string Word, string Meaning);

/// <summary>The words of the trade in one language.</summary>
/// <param name="Language">The language.</param>
/// <param name="Terms">The terms, in the order of the file.</param>
/// <param name="File">The file that they were read from.</param>
public sealed record WordList(string Language, IReadOnlyList<Term> Terms, ContentFile File);

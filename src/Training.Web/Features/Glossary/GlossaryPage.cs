using Training.Content.Glossary;

namespace Training.Web.Features.Glossary;

/// <summary>The words of the trade as they are shown.</summary>
/// <param name="Terms">The words, in the order in which they are listed.</param>
/// <param name="Wanted">The language that was wished for.</param>
public sealed record GlossaryPage(IReadOnlyList<Term> Terms, string Wanted)
{
    /// <summary>Whether some of the words are not to be had in the language that was wished for.</summary>
    public bool FellBack => Terms.Any(term => !string.Equals(term.Language, Wanted, StringComparison.OrdinalIgnoreCase));
}

using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Training.Content.Glossary;

namespace Training.Content.Packing;

/// <summary>Writes words of the trade into the text of a glossary.</summary>
internal static class GlossaryText
{
    private static readonly JsonSerializerOptions Quoted = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A glossary of some words.</summary>
    public static string Of(IEnumerable<Term> terms) => "terms:\n" + string.Concat(terms.Select(term => Line(term, 2)));

    /// <summary>
    /// A glossary with the words of another that it lacks, behind its own; every word that both have stays as it is here.
    /// Nothing where the text cannot be added to.
    /// </summary>
    public static (string Text, IReadOnlyList<Term> KeptOurs)? Joined(ContentFile ours, ContentFile theirs, string language)
    {
        var (mine, other) = (WordListDraft.Read(ours, language), WordListDraft.Read(theirs, language));
        if (mine.Problems.HasErrors || other.Problems.HasErrors) return null;
        var known = mine.Terms.ToDictionary(entry => entry.Term.Id, entry => entry.Term);
        Term[] lacking = [.. other.Terms.Select(entry => entry.Term).Where(term => !known.ContainsKey(term.Id))];
        Term[] kept = [.. other.Terms.Select(entry => entry.Term).Where(term => known.TryGetValue(term.Id, out var own) && own != term)];
        var text = lacking.Length == 0 ? ours.Text : ours.Text.TrimEnd() + "\n" + string.Concat(lacking.Select(term => Line(term, Indent(ours))));
        // Whether the words came in is seen by reading it: the list may be set in a way that cannot be added to.
        var again = WordListDraft.Read(ours with { Text = text }, language);
        return again.Problems.HasErrors || again.Terms.Count != mine.Terms.Count + lacking.Length ? null : (text, kept);
    }

    // A string of JSON is one of YAML, too.
    private static string Line(Term term, int indent) => new StringBuilder().Append(' ', indent).Append("- { id: ").Append(term.Id)
        .Append(", word: ").Append(JsonSerializer.Serialize(term.Word, Quoted))
        .Append(", meaning: ").Append(JsonSerializer.Serialize(term.Meaning, Quoted)).Append(" }\n").ToString();

    private static int Indent(ContentFile file)
    {
        var last = file.Text.ReplaceLineEndings("\n").Split('\n').LastOrDefault(line => line.TrimStart().StartsWith("- ", StringComparison.Ordinal)) ?? "  - ";
        return last.Length - last.TrimStart().Length;
    }
}

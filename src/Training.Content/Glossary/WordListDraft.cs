using Training.Content.Yaml;

namespace Training.Content.Glossary;

/// <summary>The words of one language as their file has them, sound or not.</summary>
internal sealed record WordListDraft(ContentFile File, string Language, ProblemList Problems)
{
    public IReadOnlyList<(YamlText Id, Term Term)> Terms { get; private init; } = [];

    public WordList ToWordList() => new(Language, [.. Terms.Select(entry => entry.Term)], File);

    public static WordListDraft Read(ContentFile file, string language)
    {
        var draft = new WordListDraft(file, language, new(file.Path));
        if (!PlainText.IsSound(file, draft.Problems)
            || YamlTree.Read(file.Text, draft.Problems) is not { } root
            || Fields.Open(root, "A glossary", draft.Problems, "terms") is not { } fields)
            return draft;
        List<(YamlText, Term)> terms = [];
        foreach (var node in fields.Items("terms", needed: true))
        {
            if (Fields.Open(node, "A term", draft.Problems, "id", "word", "meaning") is not { } entry) continue;
            var (id, word, meaning) = (entry.Id("id", needed: true), entry.Text("word", needed: true), entry.Text("meaning", needed: true));
            if (id is null || word is null || meaning is null) continue;
            if (terms.Exists(other => other.Item1.Text == id.Text)) draft.Problems.Error(id.Place, $"The term \"{id.Text}\" is here twice: keep one.");
            else terms.Add((id, new(new(id.Text), language, word.Text, meaning.Text)));
        }

        return draft with { Terms = terms };
    }
}

using System.Globalization;
using System.Text;
using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;

namespace Training.Content.Rendering;

/// <summary>The bones of a lesson: what a translation must share with it.</summary>
/// <param name="Headings">Its headings, in order.</param>
/// <param name="Ids">The fragment of each heading; a translation takes those of the default language.</param>
/// <param name="Blocks">Its own blocks, in order.</param>
internal sealed record LessonOutline(
    IReadOnlyList<HeadingBlock> Headings,
    IReadOnlyList<string> Ids,
    IReadOnlyList<CustomContainer> Blocks)
{
    public static LessonOutline Of(MarkdownDocument document)
    {
        HeadingBlock[] headings = [.. document.Descendants<HeadingBlock>()];
        return new(headings, IdsOf(headings), [.. document.Descendants<CustomContainer>()]);
    }

    private static List<string> IdsOf(HeadingBlock[] headings)
    {
        List<string> ids = [];
        Dictionary<string, int> taken = new(StringComparer.Ordinal);
        foreach (var heading in headings)
        {
            var slug = Slug(LessonMarkdown.PlainText(heading.Inline));
            if (slug.Length == 0) slug = "section";
            var id = slug;
            var count = taken.GetValueOrDefault(slug);
            while (count > 0 && taken.ContainsKey(id = string.Create(CultureInfo.InvariantCulture, $"{slug}-{count + 1}"))) count++;
            taken[slug] = count + 1;
            taken.TryAdd(id, 1);
            ids.Add(id);
        }

        return ids;
    }

    // Letters of every script stay: to take accents off would need tables that not every machine has.
    private static string Slug(string heading)
    {
        var slug = new StringBuilder();
        foreach (var letter in heading.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(letter) || IsMark(letter)) slug.Append(letter);
            else if (slug.Length > 0 && slug[^1] != '-' && (char.IsWhiteSpace(letter) || letter is '-' or '/')) slug.Append('-');
        }

        return slug.ToString().TrimEnd('-');
    }

    private static bool IsMark(char letter) =>
        char.GetUnicodeCategory(letter) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark;
}

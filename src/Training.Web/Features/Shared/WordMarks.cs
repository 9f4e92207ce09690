using Microsoft.AspNetCore.Html;
using Microsoft.Extensions.Localization;
using Training.Content.Comparing;

namespace Training.Web.Features.Shared;

/// <summary>Marks what is new and what is gone in a text, for the eye and for whoever is read to. Letter for letter: a view would add spaces.</summary>
public static class WordMarks
{
    /// <summary>The text with its marks.</summary>
    /// <param name="words">What the two texts have.</param>
    /// <param name="w">The words of the interface.</param>
    public static IHtmlContent Of(WordDifference words, IStringLocalizer<Words> w)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(w);
        var marked = new HtmlContentBuilder();
        foreach (var piece in words.Pieces)
        {
            switch (piece.Kind)
            {
                case PieceKind.Gone:
                    Mark("del", w["gone:"], piece.Text);
                    break;
                case PieceKind.New:
                    Mark("ins", w["new:"], piece.Text);
                    break;
                default:
                    marked.Append(piece.Text);
                    break;
            }
        }

        return marked;

        void Mark(string tag, string said, string text) =>
            marked.AppendHtml($"<{tag}><span class=\"unseen\">").Append(said).AppendHtml(" </span>").Append(text).AppendHtml($"</{tag}>");
    }
}

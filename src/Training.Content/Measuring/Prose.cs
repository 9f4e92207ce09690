using System.Text;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Rendering;

namespace Training.Content.Measuring;

/// <summary>
/// What somebody reads of a lesson, paragraph by paragraph: sentences, list entries, cells of tables, cautions and check
/// questions with their answers and replies. Headings, pictures and what is drawn from a procedure are not prose.
/// </summary>
/// <param name="Block">Where it stands.</param>
/// <param name="Text">Its words without their marks.</param>
internal sealed record Prose(LeafBlock Block, string Text)
{
    public int Words => Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Count(word => word.Any(char.IsLetterOrDigit));

    /// <summary>
    /// How many sentences it has. One ends at a full stop, a question or exclamation mark or a danda that a space and
    /// no small letter follows; what is left behind the last is a sentence too, so an entry of a list is one.
    /// </summary>
    public int Sentences
    {
        get
        {
            var (count, hasWords) = (0, false);
            for (var i = 0; i < Text.Length; i++)
            {
                hasWords |= char.IsLetterOrDigit(Text[i]);
                if (!hasWords || Text[i] is not ('.' or '?' or '!' or '…' or '।' or '॥')) continue;
                var next = i + 1;
                while (next < Text.Length && Text[next] is '"' or '”' or '’' or '»' or ')' or '.' or '?' or '!') next++;
                if (next < Text.Length && Text[next] != ' ') continue;
                while (next < Text.Length && !char.IsLetterOrDigit(Text[next])) next++;
                if (next < Text.Length && char.IsLower(Text[next])) continue;
                (count, hasWords) = (count + 1, false);
            }

            return count + (hasWords ? 1 : 0);
        }
    }

    public static IEnumerable<Prose> Of(MarkdownObject part) =>
        from block in part is LeafBlock leaf ? [leaf] : part.Descendants<LeafBlock>()
        where block is ParagraphBlock && PictureRenderer.OnlyPictureOf(block) is null
        let text = TextOf(block.Inline)
        where text.Any(char.IsLetterOrDigit)
        select new Prose(block, text);

    private static string TextOf(ContainerInline? inline)
    {
        var text = new StringBuilder();
        Write(inline);
        return string.Join(' ', text.ToString().Split((char[])[' ', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries));

        void Write(ContainerInline? container)
        {
            foreach (var part in container ?? Enumerable.Empty<Inline>())
            {
                switch (part)
                {
                    case LiteralInline literal:
                        text.Append(literal.Content);
                        break;
                    case CodeInline code:
                        text.Append(code.Content);
                        break;
                    case HtmlEntityInline entity:
                        text.Append(entity.Transcoded);
                        break;
                    case LineBreakInline:
                        text.Append(' ');
                        break;
                    case LinkInline { IsImage: true }:
                        break;
                    case ContainerInline inner:
                        Write(inner);
                        break;
                }
            }
        }
    }
}

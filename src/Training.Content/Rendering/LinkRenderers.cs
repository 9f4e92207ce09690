using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Measuring;

namespace Training.Content.Rendering;

/// <summary>Shows a link that leads somewhere allowed; of any other, the words alone. Pictures in running text too.</summary>
internal sealed class LinkRenderer(RenderContext context) : HtmlObjectRenderer<LinkInline>
{
    protected override void Write(HtmlRenderer renderer, LinkInline link)
    {
        if (link.IsImage)
        {
            PictureRenderer.WriteImage(renderer, link, context);
            return;
        }

        var address = context.AddressOf(link.Url);
        if (address is not null)
        {
            renderer.Write("<a href=\"").WriteEscapeUrl(address).Write('"');
            if (LinkTarget.Of(link.Url, context.Module?.Id) is LinkTarget.GlossaryTerm term)
                renderer.Write(" class=\"term\" title=\"").WriteEscape(context.Library.FindTerm(term.Id, context.Language)!.Meaning).Write('"');
            else if (!string.IsNullOrWhiteSpace(link.Title)) renderer.Write(" title=\"").WriteEscape(link.Title).Write('"');
            renderer.Write('>');
        }

        renderer.WriteChildren(link);
        if (address is not null) renderer.Write("</a>");
    }
}

/// <summary>Shows an address in angle brackets as a link where it leads somewhere allowed, as plain text otherwise.</summary>
internal sealed class AutolinkRenderer(RenderContext context) : HtmlObjectRenderer<AutolinkInline>
{
    protected override void Write(HtmlRenderer renderer, AutolinkInline link)
    {
        var address = context.AddressOf(link.IsEmail ? "mailto:" + link.Url : link.Url);
        if (address is null)
        {
            renderer.WriteEscape(link.Url);
            return;
        }

        renderer.Write("<a href=\"").WriteEscapeUrl(address).Write("\">").WriteEscape(link.Url).Write("</a>");
    }
}

/// <summary>Shows a picture that stands in a paragraph of its own as a figure with its caption.</summary>
internal sealed class PictureRenderer(RenderContext context) : ParagraphRenderer
{
    protected override void Write(HtmlRenderer renderer, ParagraphBlock paragraph)
    {
        if (OnlyPictureOf(paragraph) is not { } picture || context.PictureOf(picture.Url) is null)
        {
            base.Write(renderer, paragraph);
            return;
        }

        renderer.EnsureLine();
        renderer.Write("<figure>");
        WriteImage(renderer, picture, context);
        if (!string.IsNullOrWhiteSpace(picture.Title)) renderer.Write("<figcaption>").WriteEscape(Quantity.KeptTogether(picture.Title)).Write("</figcaption>");
        renderer.WriteLine("</figure>");
    }

    /// <summary>The picture that a paragraph consists of, or null.</summary>
    public static LinkInline? OnlyPictureOf(LeafBlock paragraph) =>
        paragraph.Inline?.FirstChild is LinkInline { IsImage: true, NextSibling: null } picture ? picture : null;

    /// <summary>Shows a picture; its text alternative alone where there is none of that name.</summary>
    public static void WriteImage(HtmlRenderer renderer, LinkInline picture, RenderContext context)
    {
        var alternative = LessonMarkdown.PlainText(picture);
        if (context.PictureOf(picture.Url) is not { } found)
        {
            renderer.WriteEscape(alternative);
            return;
        }

        renderer.Write("<img src=\"").WriteEscapeUrl(found.Address).Write("\" alt=\"").WriteEscape(alternative).Write('"');
        if (Modules.SvgPicture.SizeOf(found.File.Text) is var (width, height))
            renderer.Write(string.Create(System.Globalization.CultureInfo.InvariantCulture, $" width=\"{width}\" height=\"{height}\""));
        renderer.Write(" loading=\"lazy\">");
    }
}

using Markdig.Extensions.CustomContainers;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Rendering;

/// <summary>Shows the blocks that lessons have besides Markdown's own.</summary>
internal sealed class OwnBlockRenderer(RenderContext context) : HtmlObjectRenderer<CustomContainer>
{
    protected override void Write(HtmlRenderer renderer, CustomContainer container)
    {
        renderer.EnsureLine();
        switch (OwnBlocks.Of(container))
        {
            case OwnBlock.LinePlan when ProcedureOf(container) is var (procedure, variant):
                renderer.Write("<figure class=\"line-plan\">").Write(context.Drawings.LinePlan(procedure, variant, context.Language)).WriteLine("</figure>");
                break;
            case OwnBlock.TwoLists when ProcedureOf(container) is var (procedure, variant):
                TwoLists.Write(renderer, procedure, variant, context.Words);
                break;
            case OwnBlock.Reading:
                renderer.WriteLine("<section class=\"worked-reading\">");
                WriteWord(renderer, "worked-reading-word", OwnBlock.Reading);
                renderer.WriteChildren(container);
                renderer.WriteLine("</section>");
                break;
            case OwnBlock.Check:
                // Which answer is right stands in the block: it is asked on the page, and never written out.
                break;
            case { } signal when !OwnBlocks.IsDrawn(signal):
                renderer.WriteLine($"<aside class=\"signal signal-{Codes<OwnBlock>.Of(signal)}\">");
                WriteWord(renderer, "signal-word", signal);
                renderer.WriteChildren(container);
                renderer.WriteLine("</aside>");
                break;
            default:
                renderer.WriteLine("<div>");
                renderer.WriteChildren(container);
                renderer.WriteLine("</div>");
                break;
        }
    }

    private void WriteWord(HtmlRenderer renderer, string style, OwnBlock block) =>
        renderer.Write($"<p class=\"{style}\">").WriteEscape(context.Words.Of(block)).WriteLine("</p>");

    private (Procedure Procedure, VariantId? Variant)? ProcedureOf(CustomContainer container)
    {
        var arguments = OwnBlocks.Arguments(container);
        if (arguments.Length == 0 || context.Library.FindProcedure(new(arguments[0])) is not { } written) return null;
        var procedure = written.In(context.Language);
        if (arguments.Length == 1) return (procedure, null);
        var variant = new VariantId(arguments[1]);
        return procedure.Variants.Contains(variant) ? (procedure, variant) : null;
    }
}

using Markdig.Renderers;
using Training.Sequencing.Procedures;

namespace Training.Content.Rendering;

/// <summary>The two lists of a procedure: what to do, in the order of its listing, and what never, with the reason.</summary>
internal static class TwoLists
{
    public static void Write(HtmlRenderer renderer, Procedure procedure, VariantId? variant, LessonWords words)
    {
        renderer.WriteLine("<section class=\"two-lists\">");
        WriteSteps(renderer, procedure, variant, words);
        if (procedure.Decoys.Count > 0) WriteDecoys(renderer, procedure, words);
        renderer.WriteLine("</section>");
    }

    private static void WriteSteps(HtmlRenderer renderer, Procedure procedure, VariantId? variant, LessonWords words)
    {
        renderer.Write("<div class=\"list-do\"><h3>").WriteEscape(words.Do).WriteLine("</h3><ol>");
        Step[] steps = [.. procedure.Steps.Where(step => variant is null || step.IsFor(variant))];
        foreach (var step in steps)
        {
            if (step.Choice is not { } choice)
            {
                renderer.Write("<li>");
                WriteStep(renderer, step, words, variant);
                renderer.WriteLine("</li>");
                continue;
            }

            Step[] members = [.. steps.Where(other => other.Choice == choice)];
            if (members[0] != step) continue;
            renderer.Write("<li>").WriteEscape(words.OneOf).Write("<ul>");
            foreach (var member in members)
            {
                renderer.Write("<li>");
                WriteStep(renderer, member, words, variant);
                renderer.Write("</li>");
            }

            renderer.WriteLine("</ul></li>");
        }

        renderer.WriteLine("</ol></div>");
    }

    private static void WriteStep(HtmlRenderer renderer, Step step, LessonWords words, VariantId? variant)
    {
        renderer.WriteEscape(step.Do);
        if (step.IsOptional) renderer.Write(" <span class=\"step-note\">(").WriteEscape(words.Optional).Write(")</span>");
        if (variant is null && step.Variants.Count > 0)
            renderer.Write(" <span class=\"step-note\">(").WriteEscape(string.Join(", ", step.Variants)).Write(")</span>");
    }

    private static void WriteDecoys(HtmlRenderer renderer, Procedure procedure, LessonWords words)
    {
        renderer.Write("<div class=\"list-never\"><h3>").WriteEscape(words.Never).WriteLine("</h3><ul>");
        foreach (var decoy in procedure.Decoys)
        {
            renderer.Write("<li>").WriteEscape(decoy.Do);
            if (decoy.Because is { } because) renderer.Write(" <span class=\"because\">").WriteEscape(because).Write("</span>");
            renderer.WriteLine("</li>");
        }

        renderer.WriteLine("</ul></div>");
    }
}

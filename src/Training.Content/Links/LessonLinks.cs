using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Links;

/// <summary>What a lesson names exists: its procedures, pictures, other lessons and their headings.</summary>
internal static class LessonLinks
{
    public static void Check(ContentDrafts drafts)
    {
        foreach (var module in drafts.Modules.Values)
        {
            foreach (var lesson in module.Lessons)
            {
                CheckProcedures(lesson, drafts);
                LessonText.CheckHeadings(lesson.Outline, lesson.Problems);
                foreach (var block in lesson.Outline.Blocks) CheckBlock(block, lesson.Problems, drafts);
                CheckLinks(module, lesson, drafts);
                SourceLinks.Check(module, lesson);
                LessonLaws.Check(module, lesson, drafts);
            }

            if (module.Lesson is not { } original) continue;
            foreach (var translation in module.Translations) TranslationCheck.Check(original, translation);
        }
    }

    private static void CheckProcedures(LessonDraft lesson, ContentDrafts drafts)
    {
        foreach (var id in lesson.Procedures)
        {
            if (!drafts.Procedures.ContainsKey(id.Text))
                lesson.Problems.Hold(id.Place, $"There is no procedure \"{id.Text}\": write procedures/{id.Text}.yaml, or mend the id.");
        }
    }

    private static void CheckBlock(CustomContainer container, ProblemList problems, ContentDrafts drafts)
    {
        LessonText.CheckBlock(container, problems);
        if (OwnBlocks.Of(container) is not { } block || !OwnBlocks.IsDrawn(block)) return;
        var (place, name, arguments) = (LessonText.PlaceOf(container), Codes<OwnBlock>.Of(block), OwnBlocks.Arguments(container));
        if (arguments.Length is 0 or > 2)
            problems.Hold(place, $"Write the procedure's id behind \"{name}\" and, if you wish, one variant: \"::: {name} isolate-chassis\".");
        else if (!drafts.Procedures.TryGetValue(arguments[0], out var draft))
            problems.Hold(place, $"There is no procedure \"{Fields.Shown(arguments[0])}\": mend the id behind \"{name}\".");
        else if (arguments.Length == 2 && draft.Procedure is { } procedure && !procedure.Variants.Contains(new VariantId(arguments[1])))
            problems.Hold(place, $"The procedure \"{arguments[0]}\" has no variant \"{Fields.Shown(arguments[1])}\": mend it, or leave it out.");
    }

    private static void CheckLinks(ModuleDraft module, LessonDraft lesson, ContentDrafts drafts)
    {
        foreach (var link in lesson.Document.Descendants<LinkInline>())
        {
            if (link.IsImage) LessonText.CheckPicture(link, lesson.Problems);
            else if (LessonMarkdown.PlainText(link).Length == 0 && !link.Descendants<LinkInline>().Any())
                lesson.Problems.Hold(LessonText.PlaceOf(link), "The link has no words: write between the brackets where it leads.");
            if (Fault(link.Url, link.IsImage, module, drafts) is { } fault) lesson.Problems.Hold(LessonText.PlaceOf(link), fault);
        }

        foreach (var link in lesson.Document.Descendants<AutolinkInline>())
        {
            if (!link.IsEmail && Fault(link.Url, isPicture: false, module, drafts) is { } fault)
                lesson.Problems.Hold(LessonText.PlaceOf(link), fault);
        }
    }

    private static string? Fault(string? address, bool isPicture, ModuleDraft module, ContentDrafts drafts) =>
        LinkTarget.Of(address, new(module.Id)) switch
        {
            LinkTarget.Nowhere nowhere => nowhere.Why,
            LinkTarget.Picture picture => drafts.Modules.TryGetValue(picture.Module.Value, out var owner) && owner.HasPicture(picture.Path)
                ? null
                : $"There is no picture {Fields.Shown(picture.Path)} in the module \"{Fields.Shown(picture.Module.Value)}\": add the file, or mend the path.",
            _ when isPicture => "A picture is an SVG file in the module's own folder: ![what it shows](pictures/name.svg).",
            LinkTarget.GlossaryTerm term => drafts.Glossary.TryGetValue(ContentLibrary.DefaultLanguage, out var words)
                && words.Terms.Any(entry => entry.Term.Id == term.Id)
                ? null
                : $"There is no word \"{Fields.Shown(term.Id.Value)}\" in glossary/{ContentLibrary.DefaultLanguage}.yaml: mend the link, or write the word there.",
            LinkTarget.Fragment heading => HeadingFault(module, heading.Id),
            LinkTarget.LessonOf lesson when !drafts.Modules.ContainsKey(lesson.Module.Value) =>
                $"There is no module \"{Fields.Shown(lesson.Module.Value)}\": mend the link.",
            LinkTarget.LessonOf { Heading: { } heading } lesson => HeadingFault(drafts.Modules[lesson.Module.Value], heading),
            _ => null,
        };

    private static string? HeadingFault(ModuleDraft module, string heading)
    {
        if (module.Lesson is not { HasHead: true } lesson || lesson.Outline.Ids.Contains(heading)) return null;
        var ids = lesson.Outline.Ids.Take(12).Select(id => "#" + id).ToArray();
        return $"There is no heading \"#{Fields.Shown(heading)}\"; "
            + (ids.Length == 0 ? "the lesson has no headings." : $"write one of {string.Join(", ", ids)}.");
    }
}

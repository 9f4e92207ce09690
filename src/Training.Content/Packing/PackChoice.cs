using System.Text;
using Markdig.Extensions.CustomContainers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Training.Content.Competencies;
using Training.Content.Glossary;
using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Content.Scenarios;
using Training.Content.Yaml;
using Training.Sequencing;
using Training.Sequencing.Procedures;

namespace Training.Content.Packing;

/// <summary>
/// Modules with everything that they need: their procedures and those that these undo, the modules that teach those,
/// their scenarios, the competencies that are learnt from these modules alone with what their papers ask, all
/// translations and pictures, and of the glossary the words that occur.
/// </summary>
public sealed class PackChoice
{
    private readonly ContentLibrary library;
    private readonly HashSet<ModuleId> modules = [];
    private readonly HashSet<ProcedureId> procedures = [];
    private readonly HashSet<ScenarioId> scenarios = [];
    private readonly HashSet<CompetencyId> competencies = [];
    private readonly HashSet<TermId> words = [];

    private PackChoice(ContentLibrary library) => this.library = library;

    /// <summary>The files that some modules need, in the order of their paths.</summary>
    /// <param name="library">What there is.</param>
    /// <param name="chosen">The modules, at least one.</param>
    public static Outcome<IReadOnlyList<ContentFile>, Refusal> Of(ContentLibrary library, IReadOnlyList<ModuleId> chosen)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(chosen);
        if (chosen.Count == 0) return new Refusal("Choose at least one module.");
        var choice = new PackChoice(library);
        foreach (var id in chosen)
        {
            if (library.FindModule(id) is null) return new Refusal($"There is no module “{id}”.");
            choice.modules.Add(id);
        }

        while (choice.Grow())
        {
        }

        return choice.Files().OrderBy(file => file.Path, StringComparer.Ordinal).ToArray();
    }

    /// <summary>One round of what is needed by what is there; false where nothing was added.</summary>
    private bool Grow()
    {
        var before = Count;
        foreach (var module in library.Modules.Where(module => modules.Contains(module.Id)))
        {
            procedures.UnionWith(module.Procedures);
            foreach (var lesson in module.Translations.Append(module.Lesson)) Follow(module, lesson);
        }

        foreach (var written in library.Procedures.Where(written => procedures.Contains(written.Id)).ToArray())
        {
            if (written.Procedure.Mirror is { } mirror) procedures.Add(mirror.Of);
            var teaching = library.Modules.Where(module => module.Procedures.Contains(written.Id)).ToArray();
            if (teaching.Length > 0 && !teaching.Any(module => modules.Contains(module.Id))) modules.Add(teaching[0].Id);
        }

        scenarios.UnionWith(library.Scenarios
            .Where(scenario => scenario.Procedure is { } procedure ? procedures.Contains(procedure) : scenario.Module is { } module && modules.Contains(module))
            .Select(scenario => scenario.Id));
        foreach (var competency in library.Competencies.Where(competency => competency.Modules.All(modules.Contains)))
        {
            competencies.Add(competency.Id);
            scenarios.UnionWith(competency.Paper.Questions.SelectMany(draw => draw.From));
            procedures.UnionWith(competency.Observed?.Procedures ?? []);
        }

        foreach (var scenario in library.Scenarios.Where(scenario => scenarios.Contains(scenario.Id)))
        {
            if (scenario.Procedure is { } procedure) procedures.Add(procedure);
            if (scenario.Module is { } module) modules.Add(module);
        }

        return Count > before;
    }

    private int Count => modules.Count + procedures.Count + scenarios.Count + competencies.Count + words.Count;

    private void Follow(Module module, Lesson lesson)
    {
        if (LessonMarkdown.Parse(FrontMatter.Read(lesson.File, new(lesson.File.Path)).Body) is not { } document) return;
        foreach (var block in document.Descendants<CustomContainer>())
        {
            if (OwnBlocks.Of(block) is { } own && OwnBlocks.IsDrawn(own) && OwnBlocks.Arguments(block) is [var procedure, ..])
                procedures.Add(new(procedure));
        }

        foreach (var link in document.Descendants<LinkInline>())
        {
            switch (LinkTarget.Of(link.Url, module.Id))
            {
                case LinkTarget.LessonOf other:
                    modules.Add(other.Module);
                    break;
                case LinkTarget.Picture picture:
                    modules.Add(picture.Module);
                    break;
                case LinkTarget.GlossaryTerm term:
                    words.Add(term.Id);
                    break;
            }
        }
    }

    private IEnumerable<ContentFile> Files()
    {
        List<ContentFile> files =
        [
            .. library.Modules.Where(module => modules.Contains(module.Id))
                .SelectMany(module => module.Translations.Append(module.Lesson).Select(lesson => lesson.File).Concat(module.Pictures).Concat(module.Labels.Select(labels => labels.File))),
            .. library.Procedures.Where(written => procedures.Contains(written.Id))
                .SelectMany(written => written.Translations.Select(translation => translation.File).Append(written.File)),
            .. library.Scenarios.Where(scenario => scenarios.Contains(scenario.Id))
                .SelectMany(scenario => scenario.Translations.Append(scenario.Text).Select(text => text.File)),
            .. library.Competencies.Where(competency => competencies.Contains(competency.Id))
                .SelectMany(competency => competency.Translations.Select(title => title.File).Append(competency.File)),
        ];
        AddWordsThatOccur(files);
        files.AddRange(library.Glossary
            .Select(list => (list.Language, Terms: list.Terms.Where(term => words.Contains(term.Id)).ToArray()))
            .Where(list => list.Terms.Length > 0)
            .Select(list => new ContentFile($"glossary/{list.Language}.yaml", GlossaryText.Of(list.Terms))));
        return files;
    }

    private void AddWordsThatOccur(IReadOnlyList<ContentFile> files)
    {
        var text = new StringBuilder();
        foreach (var file in files)
            if (ContentPlace.Of(file.Path) is { Sort: not ContentSort.Picture, Language: null }) text.Append(file.Text).Append('\n');
        var all = text.ToString();
        words.UnionWith(library.TermsIn(ContentLibrary.DefaultLanguage).Where(term => Occurs(all, term.Word)).Select(term => term.Id));
    }

    private static bool Occurs(string text, string word)
    {
        for (var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            var end = at + word.Length;
            if ((at == 0 || !char.IsLetter(text[at - 1])) && (end == text.Length || !char.IsLetter(text[end]))) return true;
        }

        return false;
    }
}

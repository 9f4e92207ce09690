using Training.Content;
using Training.Content.Glossary;
using Training.Content.Rendering;
using Training.Content.Scenarios;
using Training.Content.Writing;
using Training.Records.Writing;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;

namespace Training.Web.Features.DraftPreviews;

/// <summary>A draft as technicians will see it.</summary>
/// <param name="Draft">The draft.</param>
/// <param name="Language">The language that it is shown in.</param>
/// <param name="Languages">Every language that it is to be had in.</param>
public sealed record DraftPreviewPage(DraftView Draft, string Language, IReadOnlyList<string> Languages)
{
    /// <summary>The lesson; null where the draft is none.</summary>
    public LessonPage? Lesson { get; private init; }

    /// <summary>The scenario; null where the draft is none.</summary>
    public ScenarioText? Scenario { get; private init; }

    /// <summary>The situation of the scenario as HTML.</summary>
    public string Situation { get; private init; } = "";

    /// <summary>What the scenario offers, in no order that tells anything.</summary>
    public IReadOnlyList<string> Offered { get; private init; } = [];

    /// <summary>The procedure, or that of the scenario; null where there is none.</summary>
    public Procedure? Procedure { get; private init; }

    /// <summary>The competency; null where the draft is none.</summary>
    public CompetencyView? Competency { get; private init; }

    /// <summary>A paper of the competency as it could be drawn.</summary>
    public IReadOnlyList<(QuestionKind Kind, string Title)> SamplePaper { get; private init; } = [];

    /// <summary>The number by which the sample paper is drawn.</summary>
    public int Paper { get; private init; }

    /// <summary>The words of the trade; none where the draft is no list of them.</summary>
    public IReadOnlyList<Term> Terms { get; private init; } = [];

    /// <summary>What keeps the draft from being shown.</summary>
    public IReadOnlyList<ContentProblem> Problems { get; private init; } = [];

    /// <summary>Other drafts that have errors; what is published is shown in place of them.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];

    /// <summary>Shows a draft.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="report">What was read of the content with all drafts on the desk.</param>
    /// <param name="drawings">Draws what lessons ask for.</param>
    /// <param name="wanted">The language that is asked for.</param>
    /// <param name="paper">The number by which a sample paper is drawn.</param>
    public static DraftPreviewPage Of(DraftView draft, DraftReport report, ILessonDrawings drawings, string? wanted, int paper)
    {
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(report);
        string[] parts = draft.Line.Path.Split('/');
        string[] name = parts[^1].Split('.');
        var language = wanted ?? (parts[0] == "glossary" ? name[0] : name.Length == 3 ? name[1] : ContentLibrary.DefaultLanguage);
        var none = new DraftPreviewPage(draft, language, [])
        {
            Problems = [.. report.AllProblems.Where(problem => problem.Level == ProblemLevel.Error).OrderBy(problem => problem.File != draft.Line.Path)],
        };
        if (report.Library is not { } library) return none;
        switch (parts[0])
        {
            case "modules" when library.FindModule(new(parts[1])) is { } module:
                return new(draft, language, [ContentLibrary.DefaultLanguage, .. module.Translations.Select(lesson => lesson.Language)])
                {
                    Lesson = new LessonRenderer(library, drawings).Render(module, language),
                };
            case "scenarios" when library.FindScenario(new(name[0])) is { } scenario:
                var job = library.JobOf(scenario)?.In(language);
                return new(draft, language, [ContentLibrary.DefaultLanguage, .. scenario.Translations.Select(text => text.Language)])
                {
                    Scenario = scenario.In(language),
                    Situation = new LessonRenderer(library, drawings).RenderSituation(scenario, language),
                    Procedure = job,
                    Offered = job is null ? [] : OfferedOf(job, scenario),
                };
            case "procedures" when library.FindProcedure(new(name[0])) is { } written:
                return new(draft, language, [ContentLibrary.DefaultLanguage, .. written.Translations.Select(translation => translation.Language)])
                {
                    Procedure = written.In(language),
                };
            case "competencies" when library.FindCompetency(new(name[0])) is { } competency:
                return new(draft, language, [ContentLibrary.DefaultLanguage, .. competency.Translations.Select(title => title.Language)])
                {
                    Competency = new(competency, library, language),
                    Paper = paper,
                    SamplePaper = [.. Training.Records.Examining.SamplePaper.Draw(library, competency.Paper, paper)
                        .Select(asked => (asked.Kind, library.FindScenario(asked.Scenario)?.In(language).Title ?? asked.Scenario.Value))],
                };
            case "glossary":
                return new(draft, language, [.. library.Glossary.Select(list => list.Language)]) { Terms = library.TermsIn(language) };
            default:
                return none;
        }
    }

    private static IReadOnlyList<string> OfferedOf(Procedure job, Scenario scenario) =>
    [
        .. job.Steps.Where(step => scenario.Variant is null || step.IsFor(scenario.Variant))
            .Where(step => !scenario.Start.Any(entry => entry.Step == step.Id)).Select(step => step.Do)
            .Concat(scenario.DecoysOf(job).Select(job.NameOf))
            .Order(StringComparer.CurrentCulture),
    ];
}

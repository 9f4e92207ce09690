using System.Globalization;
using Training.Content.Glossary;
using Training.Content.Modules;
using Training.Content.Procedures;
using Training.Content.Rendering;
using Training.Content.Scenarios;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>What is taught now, taken once for the whole request, and what makes pages of it.</summary>
/// <param name="library">What is served.</param>
/// <param name="drawings">Draws what lessons ask for.</param>
public sealed class Lessons(Library library, ILessonDrawings drawings)
{
    private readonly PublishedLibrary served = library.Current;

    /// <summary>The modules, in the order of their numbers.</summary>
    public IReadOnlyList<Module> Modules => served.Content.Modules;

    /// <summary>The module of that name, or null.</summary>
    /// <param name="id">Its name.</param>
    public Module? Find(string id) => served.Content.FindModule(new(id));

    /// <summary>The procedure of that name, or null.</summary>
    /// <param name="id">Its name.</param>
    public WrittenProcedure? FindProcedure(ProcedureId id) => served.Content.FindProcedure(id);

    /// <summary>The wall charts of what a module teaches.</summary>
    /// <param name="module">The module.</param>
    /// <param name="language">The language of their titles.</param>
    public IReadOnlyList<ChartLink> ChartsOf(Module module, string language)
    {
        ArgumentNullException.ThrowIfNull(module);
        return [.. module.Procedures.Select(FindProcedure).OfType<WrittenProcedure>().Select(written => new ChartLink(written.Id, written.In(language).Title))];
    }

    /// <summary>The scenario of that name, or null.</summary>
    /// <param name="id">Its name.</param>
    public Scenario? FindScenario(ScenarioId id) => served.Content.FindScenario(id);

    /// <summary>The words of the trade in a language; those that are missing in it in the default language.</summary>
    /// <param name="language">The language.</param>
    public IReadOnlyList<Term> TermsIn(string language) => served.Content.TermsIn(language);

    /// <summary>The module that teaches a procedure, or null.</summary>
    /// <param name="procedure">The procedure.</param>
    public Module? Teaching(ProcedureId procedure) =>
        Modules.FirstOrDefault(module => module.Procedures.Contains(procedure));

    /// <summary>The module that teaches what a scenario is about, or null.</summary>
    /// <param name="scenario">The scenario.</param>
    public Module? Teaching(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return scenario.Procedure is { } procedure
            ? Teaching(procedure)
            : Modules.FirstOrDefault(module => module.Id == scenario.Module);
    }

    /// <summary>The questions that can be practised for a module, in the order in which its procedures are taught, readings last.</summary>
    /// <param name="module">The module.</param>
    public IEnumerable<PractisedQuestion> QuestionsOf(Module module)
    {
        ArgumentNullException.ThrowIfNull(module);
        return module.Procedures
            .SelectMany(procedure => served.Content.Scenarios.Where(scenario => scenario.Procedure == procedure))
            .Concat(served.Content.Scenarios.Where(scenario => scenario.Module == module.Id))
            .SelectMany(scenario => scenario.Kinds, (scenario, kind) => new PractisedQuestion(scenario, kind));
    }

    /// <summary>
    /// What a competency, procedure, module or scenario is called in the reader's language, by its title in the default
    /// language; that title itself where it is not taught any more or not translated.
    /// </summary>
    /// <param name="title">The title in the default language.</param>
    public string Titled(string title)
    {
        var (content, language) = (served.Content, Tongues.Current.Code);
        return content.Competencies.FirstOrDefault(competency => competency.Title == title)?.TitleIn(language)
            ?? content.Procedures.FirstOrDefault(procedure => procedure.Procedure.Title == title)?.In(language).Title
            ?? content.Modules.FirstOrDefault(module => module.Title == title)?.In(language).Title
            ?? content.Scenarios.FirstOrDefault(scenario => scenario.Title == title)?.In(language).Title
            ?? title;
    }

    /// <summary>Makes pages of the lessons and situations.</summary>
    public LessonRenderer Renderer => new(served.Content, drawings);
}

/// <summary>A link to a wall chart.</summary>
/// <param name="Procedure">The procedure that it is drawn from.</param>
/// <param name="Title">What the procedure is called.</param>
public sealed record ChartLink(ProcedureId Procedure, string Title)
{
    /// <summary>Where it is.</summary>
    public string Address => $"/procedures/{Procedure}/wall-chart";
}

/// <summary>A scenario and a way of asking about it.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Kind">How it is put.</param>
public sealed record PractisedQuestion(Scenario Scenario, QuestionKind Kind)
{
    /// <summary>Where it is practised.</summary>
    public string Address => AddressOf(Scenario.Id, Kind);

    /// <summary>Where a question is practised.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="kind">How it is put.</param>
    public static string AddressOf(ScenarioId scenario, QuestionKind kind) =>
        $"/scenarios/{scenario}/practice?kind={QuestionKinds.CodeOf(kind)}";

    /// <summary>The name under which a device keeps the answer to a question until it is handed in.</summary>
    /// <param name="ticket">The question.</param>
    public static string KeptAs(PracticeTicket ticket)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        return string.Create(CultureInfo.InvariantCulture, $"practice:{ticket.Scenario}:{QuestionKinds.CodeOf(ticket.Kind)}:{ticket.Seed}");
    }
}

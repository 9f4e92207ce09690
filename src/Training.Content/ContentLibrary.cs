using Training.Content.Competencies;
using Training.Content.Glossary;
using Training.Content.Modules;
using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Content;

/// <summary>Everything that can be taught and examined, sound as a whole: every link between its parts leads somewhere.</summary>
public sealed class ContentLibrary
{
    private readonly Dictionary<ModuleId, Module> modules;
    private readonly Dictionary<ProcedureId, WrittenProcedure> procedures;
    private readonly Dictionary<ScenarioId, Scenario> scenarios;
    private readonly Dictionary<CompetencyId, Competency> competencies;

    internal ContentLibrary(
        IEnumerable<Module> modules,
        IEnumerable<WrittenProcedure> procedures,
        IEnumerable<Scenario> scenarios,
        IEnumerable<Competency> competencies,
        IEnumerable<WordList> glossary)
    {
        Modules = [.. modules.OrderBy(module => module.Id.Value, StringComparer.Ordinal)];
        Procedures = [.. procedures.OrderBy(procedure => procedure.Id.Value, StringComparer.Ordinal)];
        Scenarios = [.. scenarios.OrderBy(scenario => scenario.Id.Value, StringComparer.Ordinal)];
        Competencies = [.. competencies
            .OrderBy(MiddleModule, StringComparer.Ordinal)
            .ThenBy(competency => competency.Modules.Min(module => module.Value), StringComparer.Ordinal)
            .ThenBy(competency => competency.Id.Value, StringComparer.Ordinal)];
        Glossary = [.. glossary.OrderBy(list => list.Language, StringComparer.Ordinal)];
        this.modules = Modules.ToDictionary(module => module.Id);
        this.procedures = Procedures.ToDictionary(procedure => procedure.Id);
        this.scenarios = Scenarios.ToDictionary(scenario => scenario.Id);
        this.competencies = Competencies.ToDictionary(competency => competency.Id);
    }

    /// <summary>The language that a file without a language in its name is written in, and that a missing translation falls back to.</summary>
    public const string DefaultLanguage = "en";

    /// <summary>The modules, in the order of their numbers.</summary>
    public IReadOnlyList<Module> Modules { get; }

    /// <summary>The procedures, by id.</summary>
    public IReadOnlyList<WrittenProcedure> Procedures { get; }

    /// <summary>The scenarios, by id.</summary>
    public IReadOnlyList<Scenario> Scenarios { get; }

    /// <summary>The competencies, in the order in which the middle ones of their modules are taught, then the first, then by id: what a newcomer can reach first comes first.</summary>
    public IReadOnlyList<Competency> Competencies { get; }

    /// <summary>The words of the trade, a list for each language.</summary>
    public IReadOnlyList<WordList> Glossary { get; }

    /// <summary>
    /// The words of the trade in a language, in the order of that language's file; those that are missing in it follow in
    /// the default language.
    /// </summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public IReadOnlyList<Term> TermsIn(string language)
    {
        IReadOnlyList<Term> wished = Glossary.FirstOrDefault(list => string.Equals(list.Language, language, StringComparison.OrdinalIgnoreCase))?.Terms ?? [];
        IReadOnlyList<Term> all = Glossary.FirstOrDefault(list => list.Language == DefaultLanguage)?.Terms ?? [];
        return [.. wished, .. all.Where(term => !wished.Any(other => other.Id == term.Id))];
    }

    /// <summary>The term of that id in a language, in the default language where it is missing there, or null.</summary>
    /// <param name="id">The id.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public Term? FindTerm(TermId id, string language) => TermsIn(language).FirstOrDefault(term => term.Id == id);

    /// <summary>The module of that id, or null.</summary>
    /// <param name="id">The id.</param>
    public Module? FindModule(ModuleId id) => modules.GetValueOrDefault(id);

    /// <summary>The procedure of that id, or null.</summary>
    /// <param name="id">The id.</param>
    public WrittenProcedure? FindProcedure(ProcedureId id) => procedures.GetValueOrDefault(id);

    /// <summary>What a scenario is judged by: its procedure without the steps that cannot be done in it; null where just a reading is to be taken.</summary>
    /// <param name="scenario">The scenario.</param>
    public WrittenProcedure? JobOf(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return scenario.Procedure is { } id && FindProcedure(id) is { } written ? scenario.JobOf(written) : null;
    }

    /// <summary>The scenario of that id, or null.</summary>
    /// <param name="id">The id.</param>
    public Scenario? FindScenario(ScenarioId id) => scenarios.GetValueOrDefault(id);

    /// <summary>The competency of that id, or null.</summary>
    /// <param name="id">The id.</param>
    public Competency? FindCompetency(CompetencyId id) => competencies.GetValueOrDefault(id);

    // A competency that needs the first lesson and the last one is not the first that a newcomer goes for.
    private static string MiddleModule(Competency competency) =>
        competency.Modules.Select(module => module.Value).Order(StringComparer.Ordinal).ElementAt((competency.Modules.Count - 1) / 2);
}

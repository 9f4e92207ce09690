using Training.Content;
using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Browser.Tests;

/// <summary>What a technician who knows the trade would do: the listing of each procedure is a right order.</summary>
public sealed class RightOrders
{
    private readonly ContentLibrary library;

    public RightOrders(string contentFolder) =>
        library = ContentReader.Read(ContentFolder.Read(contentFolder)).Library
            ?? throw new InvalidOperationException("The shipped content has errors: run training check content.");

    /// <summary>What is right of options that are shown about a scenario, known by its title.</summary>
    public RightChoices Choices(string scenarioTitle) => new(library, Find(scenarioTitle));

    /// <summary>What is right of a reading that is shown about a scenario, known by its title.</summary>
    public RightReadings Readings(string scenarioTitle) => new(Find(scenarioTitle));

    /// <summary>A right order for a scenario, known by its title, after what a colleague has done.</summary>
    public IReadOnlyList<Step> For(string scenarioTitle)
    {
        var scenario = Find(scenarioTitle);
        var done = scenario.Start.Select(entry => entry.Step).ToHashSet();
        return [.. Listed(library.JobOf(scenario)!.Procedure, scenario.Variant, done).Where(step => !done.Contains(step.Id))];
    }

    private Scenario Find(string title) => library.Scenarios.Single(scenario => title.EndsWith(scenario.Title, StringComparison.Ordinal));

    /// <summary>A right order of a whole procedure.</summary>
    public IReadOnlyList<Step> For(ProcedureId procedure, VariantId? variant) =>
        Listed(library.FindProcedure(procedure)!.Procedure, variant, new HashSet<StepId>());

    private static List<Step> Listed(Procedure procedure, VariantId? variant, IReadOnlySet<StepId> done)
    {
        var steps = procedure.Steps
            .Where(step => !step.IsOptional && (step.Variants.Count == 0 || step.Variants.Contains(variant!.Value))).ToList();
        var chosen = steps.Where(step => step.Choice is not null).GroupBy(step => step.Choice)
            .Select(group => (group.FirstOrDefault(step => done.Contains(step.Id)) ?? group.First()).Id).ToHashSet();
        return [.. steps.Where(step => step.Choice is null || chosen.Contains(step.Id))];
    }
}

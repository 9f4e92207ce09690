using System.Globalization;
using Training.Content.Competencies;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Web.Drawings;

namespace Training.Web.Features.Coverage;

/// <summary>A shop's coverage, and what was typed about its needs.</summary>
/// <param name="Coverage">The coverage.</param>
/// <param name="Form">What was typed; empty where the page is just opened.</param>
public sealed record CoveragePage(ShopCoverage Coverage, NeedsForm Form)
{
    private const int MostLapsing = 10;

    /// <summary>The records that lapse within the year, the first to lapse first; at most ten.</summary>
    public IReadOnlyList<RecordLine> LapsingNext { get; } =
    [
        .. Coverage.Competencies.SelectMany(competency => competency.Holding).Where(record => record.Standing!.Until <= Coverage.LastDay)
            .OrderBy(record => record.Standing!.Until).ThenBy(record => record.Name, StringComparer.Ordinal).Take(MostLapsing),
    ];

    /// <summary>The competencies that the shop has said it needs.</summary>
    public IEnumerable<CompetencyCoverage> Needed => Coverage.Competencies.Where(competency => competency.Need > 0);

    /// <summary>The competencies that a chart says something about: somebody holds them, or is needed.</summary>
    public IReadOnlyList<CompetencyCoverage> Charted { get; } =
        [.. Coverage.Competencies.Where(competency => competency.Need > 0 || competency.Holding.Count > 0)];

    /// <summary>What stands in the field of a competency: what was typed, or what is kept.</summary>
    /// <param name="competency">The competency.</param>
    public string Typed(CompetencyCoverage competency)
    {
        ArgumentNullException.ThrowIfNull(competency);
        return Form.TypedFor(competency.Competency) ?? competency.Need.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>The calendar of a competency as plain data.</summary>
    /// <param name="competency">The competency.</param>
    public CoveragePicture Picture(CompetencyCoverage competency)
    {
        ArgumentNullException.ThrowIfNull(competency);
        return new(
            Coverage.Today, Coverage.LastDay, [.. competency.Steps.Select(step => (step.From, step.People))], competency.Need, competency.FirstBelow);
    }
}

/// <summary>What is typed about the needs: competencies and numbers side by side, in the page's order.</summary>
public sealed class NeedsForm
{
    /// <summary>The competencies.</summary>
    public IReadOnlyList<string>? Competencies { get; init; }

    /// <summary>How many people each needs, as it was typed.</summary>
    public IReadOnlyList<string?>? People { get; init; }

    /// <summary>What was typed for a competency; null where nothing was.</summary>
    /// <param name="competency">The competency.</param>
    public string? TypedFor(CompetencyId competency)
    {
        var place = Competencies?.ToList().IndexOf(competency.Value) ?? -1;
        return place >= 0 && place < People?.Count ? People[place] ?? "" : null;
    }

    /// <summary>The needs; null where something typed is no whole number or a field is missing. An empty field is nobody.</summary>
    public IReadOnlyDictionary<CompetencyId, int>? Read()
    {
        var needs = new Dictionary<CompetencyId, int>();
        foreach (var competency in (Competencies ?? []).Select(value => new CompetencyId(value ?? "")))
        {
            if (Number(competency) is not { } people) return null;
            needs[competency] = people;
        }

        return needs;
    }

    /// <summary>The first competency whose field holds no whole number; null where there is none.</summary>
    public string? FirstWrong => (Competencies ?? []).FirstOrDefault(value => Number(new(value ?? "")) is null);

    private int? Number(CompetencyId competency) => TypedFor(competency)?.Trim() is { } typed
        && int.TryParse(typed.Length == 0 ? "0" : typed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var people) ? people : null;
}

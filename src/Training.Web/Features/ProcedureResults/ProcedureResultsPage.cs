using Training.Records.Results;
using Training.Sequencing.Verdicts;

namespace Training.Web.Features.ProcedureResults;

/// <summary>The results of a job.</summary>
/// <param name="Results">The results.</param>
public sealed record ProcedureResultsPage(Training.Records.Results.ProcedureResults Results)
{
    private const int MostShops = 100;

    /// <summary>The lines about rules.</summary>
    public IReadOnlyList<ResultLine> Rules { get; } = [.. Results.Lines.Where(line => line.What.Kind == ChanceKind.Rule)];

    /// <summary>Everything else that anybody got wrong, or that nobody may be shown of.</summary>
    public IReadOnlyList<ResultLine> Others { get; } = [.. Results.Lines.Where(line => line.What.Kind != ChanceKind.Rule && line.Share is not { Part: 0 })];

    /// <summary>How many of the other things nobody got wrong.</summary>
    public int NeverWrong { get; } = Results.Lines.Count(line => line.What.Kind != ChanceKind.Rule && line.Share is { Part: 0 });

    /// <summary>The groups that can be chosen of one cut; of very many shops the first hundred.</summary>
    /// <param name="cut">The cut.</param>
    public IReadOnlyList<GroupChoice> Of(Cut cut) => [.. Results.Groups.Where(choice => choice.Cut == cut).Take(MostShops)];

    /// <summary>A group as the address names it.</summary>
    /// <param name="choice">The group.</param>
    public static string CodeOf(GroupChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return $"{choice.Cut.ToString().ToLowerInvariant()}:{choice.Group}";
    }

    /// <summary>Reads a group from an address; null where it names none.</summary>
    /// <param name="code">The text.</param>
    public static GroupAsked? Read(string? code) =>
        code?.Split(':', 2) is [var cut, var group] && Enum.TryParse<Cut>(cut, ignoreCase: true, out var known) ? new(known, group) : null;
}

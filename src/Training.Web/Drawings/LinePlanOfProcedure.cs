using Training.Sequencing.Procedures;

namespace Training.Web.Drawings;

/// <summary>Makes the line plan of a procedure on one kind of vehicle.</summary>
public static class LinePlanOfProcedure
{
    /// <summary>Draws it as SVG.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static string Draw(Procedure procedure, VariantId? variant)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        return LinePlanDrawing.Draw(Of(procedure, variant), new(procedure.Title, "after"), "plan-" + procedure.Id);
    }

    private static LinePlanPicture Of(Procedure procedure, VariantId? variant)
    {
        var kind = variant ?? procedure.Variants.Cast<VariantId?>().FirstOrDefault();
        var steps = procedure.Steps.Where(step => step.Variants.Count == 0 || (kind is { } v && step.Variants.Contains(v))).ToList();
        return new([.. steps.Select(step => new LinePlanStation(step.Do, null, step.IsWait, step.IsOptional || step.Choice is not null))], []);
    }
}

using Training.Content.Rendering;
using Training.Sequencing.Procedures;

namespace Training.Web.Startup;

/// <summary>The pictures that lessons ask for.</summary>
public sealed class LessonDrawings : ILessonDrawings
{
    /// <inheritdoc/>
    public string LinePlan(Procedure procedure, VariantId? variant) => Drawings.LinePlanOfProcedure.Draw(procedure, variant);
}

using Training.Content.Rendering;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;

namespace Training.Web.Startup;

/// <summary>The pictures that lessons ask for.</summary>
public sealed class LessonDrawings : ILessonDrawings
{
    /// <inheritdoc/>
    public string LinePlan(Procedure procedure, VariantId? variant, string language) =>
        Drawings.LinePlanOfProcedure.Draw(procedure, variant, WordBook.For(language));
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Content;
using Training.Records.Accounts;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.WallCharts;

/// <summary>Procedures as sheets to print and hang up. Shut while a paper is open: they hold the order.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner}")]
[ShutDuringPaper]
public sealed class WallChartsController(Lessons lessons, CurrentReader reader) : Controller
{
    /// <summary>The chart of a procedure.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null for the first listed.</param>
    /// <param name="language">The language of the chart; null for the reader's own.</param>
    [HttpGet("/procedures/{procedure}/wall-chart")]
    public async Task<IActionResult> Show(string procedure, string? variant, string? language)
    {
        if (lessons.FindProcedure(new(procedure)) is not { } written) return NotFound();
        var kinds = written.Procedure.Variants;
        if (variant is not null && !kinds.Contains(new VariantId(variant))) return NotFound();
        var wanted = language ?? await reader.Language();
        var translation = written.Translations.FirstOrDefault(other => string.Equals(other.Language, wanted, StringComparison.OrdinalIgnoreCase));
        return View(new WallChart(
            written, written.In(wanted), translation?.Language ?? ContentLibrary.DefaultLanguage,
            variant is not null ? new VariantId(variant) : kinds.Count > 0 ? kinds[0] : null));
    }
}

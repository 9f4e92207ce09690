using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Training.Content;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.WallCharts;

/// <summary>Procedures as sheets to print and hang up. Shut while a paper is open: they hold the order.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class WallChartsController(Lessons lessons, CurrentReader reader, TimeProvider clock) : Controller
{
    /// <summary>All charts, by the lesson that teaches them.</summary>
    [HttpGet("/wall-charts")]
    public async Task<IActionResult> Index()
    {
        var language = await reader.Language();
        return View(lessons.Modules.Select(module => new ChartGroup(module.In(language).Title, lessons.ChartsOf(module, language))).Where(group => group.Charts.Count > 0).ToList());
    }

    /// <summary>The chart of a procedure.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="language">The language of the chart; null for the reader's own.</param>
    [HttpGet("/procedures/{procedure}/wall-chart")]
    public async Task<IActionResult> Show(string procedure, string? language)
    {
        if (lessons.FindProcedure(new(procedure)) is not { } written) return NotFound();
        var wished = Tongues.Find(language)?.Code ?? await reader.Language();
        var chart = written.Translations.FirstOrDefault(other => string.Equals(other.Language, wished, StringComparison.OrdinalIgnoreCase))?.Language
            ?? ContentLibrary.DefaultLanguage;
        return View(new WallChartPage(written, chart, Dates.Day(Instant.FromDateTimeOffset(clock.GetUtcNow()), await reader.Zone()))
        {
            Wished = wished,
            Lesson = lessons.Teaching(written.Id),
        });
    }
}

/// <summary>The charts of what a lesson teaches.</summary>
/// <param name="Title">What the lesson is called.</param>
/// <param name="Charts">The procedures.</param>
public sealed record ChartGroup(string Title, IReadOnlyList<ChartLink> Charts);

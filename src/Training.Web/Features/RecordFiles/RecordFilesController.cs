using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Interchange;
using Training.Records.Overviews;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RecordFiles;

/// <summary>Who may do what as a file for other programs.</summary>
/// <param name="overview">The people and their records.</param>
/// <param name="current">Who asks.</param>
[Authorize(Roles = Roles.Owner + "," + Roles.Administrator)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class RecordFilesController(Overview overview, CurrentActor current) : Controller
{
    /// <summary>As separated values.</summary>
    /// <param name="on">The day, as <c>2026-11-25</c>; empty for today.</param>
    /// <param name="shop">One shop alone; empty for all within reach.</param>
    [HttpGet("/people/records.csv")]
    public Task<IActionResult> Csv(string? on, ShopId? shop) => Made(on, shop, "text/csv", "csv", RecordsFile.Csv);

    /// <summary>As JSON.</summary>
    /// <param name="on">The day, as <c>2026-11-25</c>; empty for today.</param>
    /// <param name="shop">One shop alone; empty for all within reach.</param>
    [HttpGet("/people/records.json")]
    public Task<IActionResult> Json(string? on, ShopId? shop) => Made(on, shop, "application/json", "json", RecordsFile.JsonText);

    private async Task<IActionResult> Made(string? on, ShopId? shop, string type, string ending, Func<CompetencyTable, string> write)
    {
        // What is no day is said on the page of the people.
        if (!DayAsked.TryRead(on, out var day)) return Redirect($"/people?on={Uri.EscapeDataString(on!)}");
        var table = await overview.WhoMayDoWhat(await current.Get(), day, shop);
        if (!table.IsOk) return this.NotShown(table.Fault);
        return File(Encoding.UTF8.GetBytes(write(table.Value)), $"{type}; charset=utf-8", $"records.{ending}");
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Records;

/// <summary>Competency records: one's own, and each with its evidence.</summary>
[Route("/records")]
public sealed class RecordsController(CompetencyRecords records, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>One's own records, and the papers, runs and tries behind them.</summary>
    /// <param name="papers">The papers.</param>
    /// <param name="runs">The observed runs.</param>
    /// <param name="practice">The practice tries.</param>
    /// <param name="lessons">What is taught now.</param>
    [HttpGet]
    [Authorize(Roles = Roles.Technician)]
    public async Task<IActionResult> Index(
        [FromServices] Training.Records.Examining.Papers papers, [FromServices] Training.Records.Observing.Runs runs, [FromServices] Training.Records.Practising.Practice practice, [FromServices] Lessons lessons)
    {
        var actor = await current.Get();
        var own = await records.Of(actor, actor.Person);
        if (!own.IsOk) return this.NotShown(own.Fault);
        var tries = await practice.Of(actor, actor.Person);
        return View(new OwnRecordsPage(own.Value, await papers.Mine(actor), await runs.Mine(actor), await reader.Zone())
        {
            Tries = [.. (tries.IsOk ? tries.Value : []).Select(line => new TryLine(line, lessons.FindScenario(line.Scenario)?.Title))],
        });
    }

    /// <summary>A record with what it rests on.</summary>
    /// <param name="record">The record.</param>
    [HttpGet("{record}")]
    [Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
    public async Task<IActionResult> Show(RecordId record)
    {
        var actor = await current.Get();
        var found = await records.Look(actor, record);
        return found.IsOk
            ? View(new RecordPage(found.Value, found.Value.Record.Person == actor.Person, await reader.Zone()))
            : this.NotShown(found.Fault);
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Overviews;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Next;

/// <summary>The technician's first page: what to do next, and until when their records are good.</summary>
[Authorize(Roles = Roles.Technician)]
public sealed class NextController(Overview overview, CompetencyRecords records, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>What to do next, and the whole way to each competency.</summary>
    [HttpGet("/next")]
    public async Task<IActionResult> Index()
    {
        var actor = await current.Get();
        var paths = await overview.WhatNext(actor, actor.Person);
        if (!paths.IsOk) return this.NotShown(paths.Fault);
        var suspended = new List<SuspendedRecord>();
        foreach (var path in paths.Value.Where(path => path.Record?.Standing?.State == RecordState.Suspended))
            if (await records.Look(actor, path.Record!.Id) is { IsOk: true, Value: var view }
                && view.Events.LastOrDefault(happened => happened.Kind == RecordEventKind.Suspended) is { } act)
                suspended.Add(new(path.Record, act));
        return View(new NextPage(paths.Value, await reader.Zone()) { Suspended = suspended, IsOwner = actor.Is(Roles.Owner) });
    }
}

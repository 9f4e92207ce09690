using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Overviews;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Next;

/// <summary>The technician's first page: what to do next, and until when their records are good.</summary>
[Authorize(Roles = Roles.Technician)]
public sealed class NextController(Overview overview, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>What to do next, and the whole way to each competency.</summary>
    [HttpGet("/next")]
    public async Task<IActionResult> Index()
    {
        var actor = await current.Get();
        var paths = await overview.WhatNext(actor, actor.Person);
        return paths.IsOk ? View(new NextPage(paths.Value, await reader.Zone())) : this.NotShown(paths.Fault);
    }
}

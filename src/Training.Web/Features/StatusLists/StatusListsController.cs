using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Proofs.StatusLists;
using Training.Web.Features.Shared;

namespace Training.Web.Features.StatusLists;

/// <summary>Which credentials are withdrawn or suspended, in lists that tell nobody whose was looked up. Anybody may read them.</summary>
[AllowAnonymous]
public sealed class StatusListsController(Training.Records.Proving.StatusLists lists) : Controller
{
    /// <summary>The withdrawn ones.</summary>
    /// <param name="number">Which list, from 1.</param>
    [HttpGet("/status/withdrawn/{number:int}")]
    public async Task<IActionResult> Withdrawn(int number) =>
        this.Bytes(await lists.List(StatusPurpose.Revocation, number), "application/vc");

    /// <summary>The suspended ones.</summary>
    /// <param name="number">Which list, from 1.</param>
    [HttpGet("/status/suspended/{number:int}")]
    public async Task<IActionResult> Suspended(int number) =>
        this.Bytes(await lists.List(StatusPurpose.Suspension, number), "application/vc");
}

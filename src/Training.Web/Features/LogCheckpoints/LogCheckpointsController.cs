using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Ledger;
using Training.Web.Features.Shared;

namespace Training.Web.Features.LogCheckpoints;

/// <summary>What the log was a moment ago, signed. Anybody may read it and hold the provider to it.</summary>
[AllowAnonymous]
public sealed class LogCheckpointsController(PublicLog log) : Controller
{
    /// <summary>The newest checkpoint.</summary>
    [HttpGet("/log/checkpoint")]
    public async Task<IActionResult> Show() => this.Bytes(await log.NewestCheckpoint());
}

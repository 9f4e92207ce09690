using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Ledger;
using Training.Web.Features.Shared;

namespace Training.Web.Features.LogEntries;

/// <summary>Entries of the log. Anybody may read them: they name nobody.</summary>
[AllowAnonymous]
public sealed class LogEntriesController(PublicLog log) : Controller
{
    /// <summary>An entry, with the proof that it stands in the log.</summary>
    /// <param name="index">Its place, from 0.</param>
    /// <param name="size">The size of the log that the proof is for; that of the newest checkpoint where it is left out.</param>
    [HttpGet("/log/entries/{index:long}")]
    public async Task<IActionResult> Show(long index, long? size) => this.Bytes(await log.Entry(index, size));
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Ledger;
using Training.Web.Features.Shared;

namespace Training.Web.Features.LogExtensions;

/// <summary>That the log was only added to. Anybody may ask for it.</summary>
[AllowAnonymous]
public sealed class LogExtensionsController(PublicLog log) : Controller
{
    /// <summary>The proof that the log of one size is the beginning of the log of another.</summary>
    /// <param name="to">The later size; that of the newest checkpoint where it is left out.</param>
    /// <param name="from">The earlier size, from 1.</param>
    [HttpGet("/log/extension")]
    public async Task<IActionResult> Show(long? to, long from = 1) => this.Bytes(await log.Extension(from, to));
}

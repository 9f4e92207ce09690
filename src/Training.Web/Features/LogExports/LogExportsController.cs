using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Ledger;

namespace Training.Web.Features.LogExports;

/// <summary>The whole log as a file. Anybody may keep a copy: what others hold cannot be rewritten unnoticed.</summary>
[AllowAnonymous]
public sealed class LogExportsController(PublicLog log) : Controller
{
    /// <summary>The file, one JSON object a line.</summary>
    [HttpGet("/log/export.jsonl")]
    public async Task Show()
    {
        var lines = await log.Export();
        Response.ContentType = "application/jsonl";
        Response.Headers.ContentDisposition = "attachment; filename=\"log.jsonl\"";
        Response.Headers.CacheControl = "no-store";
        foreach (var line in lines)
        {
            await Response.Body.WriteAsync(line, HttpContext.RequestAborted);
            await Response.Body.WriteAsync("\n"u8.ToArray(), HttpContext.RequestAborted);
        }
    }
}

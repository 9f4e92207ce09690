using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Learning;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Readings;

/// <summary>That a lesson was read.</summary>
[Authorize(Roles = Roles.Technician)]
[ShutDuringPaper]
public sealed class ReadingsController(Reading reading, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Notes that the technician has read a lesson.</summary>
    /// <param name="module">The module.</param>
    /// <param name="language">The language that it was read in.</param>
    [HttpPost("/modules/{module}/readings")]
    public async Task<IActionResult> Create(string module, string? language)
    {
        var read = await reading.Finish(await current.Get(), new(module), language ?? ContentLibrary.DefaultLanguage);
        return read.IsOk
            ? this.Done(words["Noted: you have read this lesson. Now practise it."], $"/modules/{read.Value.Module}#practise-title")
            : this.NotDone(read.Fault, "/modules");
    }
}

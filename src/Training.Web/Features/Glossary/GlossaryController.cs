using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Glossary;

/// <summary>The words of the trade.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner}")]
[ShutDuringPaper]
public sealed class GlossaryController(Lessons lessons, CurrentReader reader) : Controller
{
    /// <summary>All words, each with what it means.</summary>
    /// <param name="language">The language to read them in; null for the reader's own.</param>
    [HttpGet("/glossary")]
    public async Task<IActionResult> Index(string? language)
    {
        var wanted = language ?? await reader.Language();
        return View(new GlossaryPage(lessons.TermsIn(wanted), wanted));
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Publishing;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Competencies;

/// <summary>What a competency asks. Credentials name this page, so that whoever is shown one can look.</summary>
[AllowAnonymous]
public sealed class CompetenciesController(PublishedCompetencies competencies) : Controller
{
    /// <summary>What is asked, how long it holds, and where it is taught, in the reader's language.</summary>
    /// <param name="competency">The competency.</param>
    [HttpGet("/competencies/{competency}")]
    public async Task<IActionResult> Show(string competency) =>
        await competencies.Find(new(competency)) is { } found ? View(found) : this.NotShown(Refused.NotFound);
}

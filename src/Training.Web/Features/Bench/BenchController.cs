using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Measures.Readings;
using Training.Records.Accounts;
using Training.Web.Startup;

namespace Training.Web.Features.Bench;

/// <summary>The calculator of the bench: a job, its numbers, the answer with its sum and its sources. Nothing is kept.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner}")]
[ShutDuringPaper]
[Route("/bench")]
public sealed class BenchController : Controller
{
    /// <summary>The jobs.</summary>
    [HttpGet]
    public IActionResult Index() => View(Measure.Groups);

    /// <summary>One job: its form and, where numbers were given, what comes of them.</summary>
    /// <param name="measure">The measure, such as <c>charge-from-voltage</c>.</param>
    [HttpGet("{measure}")]
    public IActionResult Show(string measure)
    {
        var found = Measure.Find(measure);
        if (!found.IsOk) return NotFound();
        var page = BenchPage.Of(found.Value, name => Request.Query[name]);
        if (page.IsWrong) Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return View(page);
    }
}

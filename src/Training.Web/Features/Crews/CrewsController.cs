using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content.Competencies;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Crews;

/// <summary>Confirming the crew of a job.</summary>
[Authorize(Roles = Roles.Owner)]
public sealed class CrewsController(Training.Records.Staffing.Jobs jobs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Confirms the ticked people.</summary>
    /// <param name="job">The job.</param>
    /// <param name="places">What is ticked, each as <c>competency/person</c>.</param>
    [HttpPost("/jobs/{job}/crew")]
    public async Task<IActionResult> Create(JobId job, IReadOnlyList<string>? places)
    {
        var chosen = new List<(CompetencyId, PersonId)>();
        foreach (var place in places ?? [])
        {
            var parts = (place ?? "").Split('/');
            if (parts.Length != 2 || !PersonId.TryParse(parts[1], null, out var person)) return this.NotShown(Refused.NotFound);
            chosen.Add((new(parts[0]), person));
        }

        var outcome = await jobs.Confirm(await current.Get(), job, chosen);
        return outcome.IsOk ? this.Done(words["The crew is confirmed."], $"/jobs/{job}") : this.NotDone(outcome.Fault, $"/jobs/{job}");
    }
}

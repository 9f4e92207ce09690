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
    /// <param name="prove">Whether the proof for the customer is made at once.</param>
    [HttpPost("/jobs/{job}/crew")]
    public async Task<IActionResult> Create(JobId job, IReadOnlyList<string>? places, bool prove = false)
    {
        var chosen = new List<(CompetencyId, PersonId)>();
        foreach (var place in places ?? [])
        {
            var parts = (place ?? "").Split('/');
            if (parts.Length != 2 || !PersonId.TryParse(parts[1], null, out var person)) return this.NotShown(Refused.NotFound);
            chosen.Add((new(parts[0]), person));
        }

        var outcome = await jobs.Confirm(await current.Get(), job, chosen);
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/jobs/{job}");
        if (!prove) return this.Done(words["The crew is confirmed."], $"/jobs/{job}");
        var proof = await jobs.Prove(await current.Get(), job, line => JobNames.ForCustomer(words, line));
        return proof.IsOk ? this.Done(words["The crew is confirmed."], $"/proofs/{proof.Value.Id}") : this.NotDone(proof.Fault, $"/jobs/{job}");
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.JobProofs;

/// <summary>The proof of a job's crew.</summary>
[Authorize(Roles = Roles.Owner)]
public sealed class JobProofsController(Training.Records.Staffing.Jobs jobs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Makes the proof of the confirmed crew for the job's customer, with the vehicle and the days on it.</summary>
    /// <param name="job">The job.</param>
    [HttpPost("/jobs/{job}/proof")]
    public async Task<IActionResult> Create(JobId job)
    {
        var outcome = await jobs.Prove(await current.Get(), job, line => JobNames.ForCustomer(words, line));
        return outcome.IsOk ? Redirect($"/proofs/{outcome.Value.Id}") : this.NotDone(outcome.Fault, $"/jobs/{job}");
    }
}

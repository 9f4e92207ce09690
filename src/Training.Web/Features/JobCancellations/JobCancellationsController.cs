using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.JobCancellations;

/// <summary>Calling a job off.</summary>
[Authorize(Roles = Roles.Owner)]
public sealed class JobCancellationsController(Training.Records.Staffing.Jobs jobs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Calls a job off: it stays to be read, and nobody is reminded of it any more.</summary>
    /// <param name="job">The job.</param>
    [HttpPost("/jobs/{job}/cancellation")]
    public async Task<IActionResult> Create(JobId job)
    {
        var outcome = await jobs.CallOff(await current.Get(), job);
        return outcome.IsOk ? this.Done(words["The job is called off."], $"/jobs/{job}") : this.NotDone(outcome.Fault, $"/jobs/{job}");
    }
}

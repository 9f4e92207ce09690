using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RunSignatures;

/// <summary>The examiner's signature under an observed run.</summary>
[Authorize(Roles = Roles.Examiner)]
public sealed class RunSignaturesController(
    Training.Records.Observing.Runs runs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Signs a run; where it was the last thing needed, the competency record is issued with it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="note">What the examiner adds.</param>
    [HttpPost("/runs/{run}/signature")]
    public async Task<IActionResult> Create(RunId run, string? note)
    {
        var outcome = await runs.Sign(await current.Get(), run, note ?? "");
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/runs/{run}");
        var said = outcome.Value switch
        {
            { Record: not null } => words["Signed. Everything is shown: the competency record is issued."],
            { Passed: true } => words["Signed. The run is passed."],
            _ => words["Signed. The run is not passed; it can be done again."],
        };
        return this.Done(said, $"/runs/{run}");
    }
}

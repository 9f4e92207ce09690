using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Admissions;

/// <summary>Admitting people to a sitting.</summary>
[Authorize(Roles = Roles.Examiner)]
public sealed class AdmissionsController(Training.Records.Examining.Sittings sittings, CurrentActor current) : Controller
{
    /// <summary>Admits a technician.</summary>
    /// <param name="sitting">The sitting.</param>
    /// <param name="person">The technician.</param>
    [HttpPost("/sittings/{sitting}/admissions")]
    public async Task<IActionResult> Create(SittingId sitting, PersonId person)
    {
        var outcome = await sittings.Admit(await current.Get(), sitting, person);
        return outcome.IsOk ? Redirect($"/sittings/{sitting}") : this.NotDone(outcome.Fault, $"/sittings/{sitting}");
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.AdmissionEndings;

/// <summary>Taking somebody off a sitting who was admitted by mistake.</summary>
[Authorize(Roles = Roles.Examiner)]
public sealed class AdmissionEndingsController(
    Training.Records.Examining.Sittings sittings, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Takes a technician off who has not begun.</summary>
    /// <param name="sitting">The sitting.</param>
    /// <param name="person">The technician.</param>
    [HttpPost("/sittings/{sitting}/admission-endings")]
    public async Task<IActionResult> Create(SittingId sitting, PersonId person)
    {
        var outcome = await sittings.TakeOff(await current.Get(), sitting, person);
        return outcome.IsOk
            ? this.Done(words["Taken off the sitting. Nothing of the admission is kept."], $"/sittings/{sitting}")
            : this.NotDone(outcome.Fault, $"/sittings/{sitting}");
    }
}

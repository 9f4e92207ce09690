using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RecordSuspensions;

/// <summary>Suspends a record: it does not hold until it is reinstated.</summary>
[Authorize(Roles = Roles.Owner + "," + Roles.Administrator)]
public sealed class RecordSuspensionsController(CompetencyRecords records, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Suspends a record: it does not hold until it is reinstated.</summary>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    [HttpPost("/records/{record}/suspension")]
    public async Task<IActionResult> Create(RecordId record, string? reason)
    {
        var outcome = await records.Suspend(await current.Get(), record, reason ?? "");
        return outcome.IsOk
            ? this.Done(words["The record of {0} is suspended.", outcome.Value.Record.Name], $"/records/{record}")
            : this.NotDone(outcome.Fault, $"/records/{record}");
    }
}

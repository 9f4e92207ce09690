using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RecordReinstatements;

/// <summary>Reinstates a suspended record.</summary>
[Authorize(Roles = Roles.Owner + "," + Roles.Administrator)]
public sealed class RecordReinstatementsController(CompetencyRecords records, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Reinstates a suspended record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    [HttpPost("/records/{record}/reinstatement")]
    public async Task<IActionResult> Create(RecordId record, string? reason)
    {
        var outcome = await records.Reinstate(await current.Get(), record, reason ?? "");
        return outcome.IsOk
            ? this.Done(words["The record of {0} counts again.", outcome.Value.Record.Name], $"/records/{record}")
            : this.NotDone(outcome.Fault, $"/records/{record}");
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RecordConfirmations;

/// <summary>Confirms a record: somebody responsible says that the person has done this work in the last months.</summary>
[Authorize(Roles = Roles.Owner + "," + Roles.Examiner + "," + Roles.Administrator)]
public sealed class RecordConfirmationsController(CompetencyRecords records, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Confirms a record for the period that today is in. A second time on the same day changes nothing.</summary>
    /// <param name="record">The record.</param>
    /// <param name="work">Which work was seen.</param>
    [HttpPost("/records/{record}/confirmation")]
    public async Task<IActionResult> Create(RecordId record, string? work)
    {
        var outcome = await records.Confirm(await current.Get(), record, work ?? "");
        if (!outcome.IsOk) return this.NotDone(outcome.Fault, $"/records/{record}");
        var confirmed = outcome.Value.Record;
        return this.Done(words["The record of {0} is confirmed. It holds until {1}.", confirmed.Name, Dates.Day(confirmed.Standing!.Until)], $"/records/{record}");
    }
}

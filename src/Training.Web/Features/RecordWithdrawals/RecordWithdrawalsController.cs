using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.RecordWithdrawals;

/// <summary>Withdraws a record for good.</summary>
[Authorize(Roles = Roles.Administrator + "," + Roles.Examiner)]
public sealed class RecordWithdrawalsController(CompetencyRecords records, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Withdraws a record for good; asked for twice, because nobody can undo it.</summary>
    /// <param name="record">The record.</param>
    /// <param name="reason">Why.</param>
    /// <param name="sure">Whether the tick was set.</param>
    [HttpPost("/records/{record}/withdrawal")]
    public async Task<IActionResult> Create(RecordId record, string? reason, string? sure)
    {
        var back = $"/records/{record}";
        if (sure != "yes") return this.NotDone(new Refusal(words["Set the tick first: a record that is withdrawn stays so."]), back, nameof(sure));
        var outcome = await records.Withdraw(await current.Get(), record, reason ?? "");
        return outcome.IsOk
            ? this.Done(words["The record of {0} is withdrawn.", outcome.Value.Record.Name], back)
            : this.NotDone(outcome.Fault, back);
    }
}

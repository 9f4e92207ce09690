using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Agreement;

/// <summary>How far examiners who observed the same work agree.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Administrator}")]
[ShutDuringPaper]
public sealed class AgreementController(ExaminerAgreement agreement, Library library, CurrentActor current) : Controller
{
    /// <summary>The agreement, and what is judged differently most often.</summary>
    [HttpGet("/agreement")]
    public async Task<IActionResult> Index()
    {
        var outcome = await agreement.Look(await current.Get());
        return outcome.IsOk ? View(new AgreementPage(outcome.Value, library.Current.Content)) : this.NotShown(outcome.Fault);
    }
}

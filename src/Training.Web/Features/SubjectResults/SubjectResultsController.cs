using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Results;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SubjectResults;

/// <summary>Who gets one rule, decoy or step of a job wrong.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
public sealed class SubjectResultsController(RuleResults results, Lessons lessons, CurrentActor current) : Controller
{
    /// <summary>How many people in each source, and by revision, month, shop and language.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="kind">The kind, such as <c>rule</c>.</param>
    /// <param name="subject">The id of the rule, decoy or step.</param>
    /// <param name="source">The source that is told apart.</param>
    [HttpGet("/results/{procedure}/{kind}/{subject}")]
    public async Task<IActionResult> Show(string procedure, string kind, string subject, string? source)
    {
        if (ResultWords.ReadKind(kind) is not { } known) return this.NotShown(Refused.NotFound);
        var outcome = await results.Of(await current.Get(), new(procedure), new(known, subject), ResultWords.ReadSource(source));
        return outcome.IsOk
            ? View(new SubjectResultsPage(outcome.Value, lessons.Teaching(outcome.Value.Procedure.Id)))
            : this.NotShown(outcome.Fault);
    }
}

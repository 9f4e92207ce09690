using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Results;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SubjectResults;

/// <summary>Who gets one rule, decoy or step of a job wrong.</summary>
[Authorize(Roles = $"{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
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
        if (!outcome.IsOk) return this.NotShown(outcome.Fault);
        var (written, lesson) = (outcome.Value.Procedure, lessons.Teaching(outcome.Value.Procedure.Id));
        var section = lesson is null
            ? null
            : lessons.Renderer.Teaching(lesson, written.Procedure, SidesOf(written.Procedure, outcome.Value.What), Tongues.Current.Code);
        return View(new SubjectResultsPage(outcome.Value, lesson) { Section = section });
    }

    /// <summary>The steps that it is about: of a rule of order the earlier and the later ones.</summary>
    private static IReadOnlyList<IReadOnlyList<StepId>> SidesOf(Procedure procedure, Chance what) => what.Kind != ChanceKind.Rule
        ? [[new(what.Subject)]]
        : procedure.Rules.FirstOrDefault(rule => rule.Id.Value == what.Subject) switch
        {
            OrderRule rule => [rule.First, rule.Then],
            StateRule rule => [[rule.Step]],
            _ => [[]],
        };
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PaperHandIns;

/// <summary>Handing a paper in: asked once, done once.</summary>
[Authorize(Roles = Roles.Technician)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
[Route("/papers/{paper}/hand-in")]
public sealed class PaperHandInsController(Training.Records.Examining.Papers papers, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>What is saved and what is not, before it is handed in.</summary>
    /// <param name="paper">The paper.</param>
    [HttpGet]
    public async Task<IActionResult> Index(PaperId paper)
    {
        var open = await papers.Open(await current.Get(), paper, await reader.Language());
        return open.IsOk ? View(new HandInPage(open.Value, await reader.Zone())) : Redirect($"/papers/{paper}");
    }

    /// <summary>Hands the paper in. A second time leads to the same result.</summary>
    /// <param name="paper">The paper.</param>
    [HttpPost]
    public async Task<IActionResult> Create(PaperId paper)
    {
        var result = await papers.HandIn(await current.Get(), paper);
        return result.IsOk ? this.Done(null, $"/papers/{paper}") : this.NotDone(result.Fault, $"/papers/{paper}");
    }
}

/// <summary>A paper that is about to be handed in.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Zone">The time zone that times are told in.</param>
public sealed record HandInPage(OpenPaper Paper, string Zone)
{
    /// <summary>The questions with nothing in their answer.</summary>
    public IReadOnlyList<OpenQuestion> Unanswered =>
        [.. Paper.Questions.Where(question => question.Saved is not { Parts: > 0 })];

    /// <summary>The questions whose answer has begun and is not complete, each with what it lacks.</summary>
    public IReadOnlyList<(OpenQuestion Question, IReadOnlyList<Refusal> Gaps)> Incomplete =>
    [
        .. Paper.Questions.Where(question => question.Saved is { Parts: > 0 })
            .Select(question => (question, AnswerGaps.Of(question.Question, question.Saved!.AnswerJson))).Where(item => item.Item2.Count > 0),
    ];
}

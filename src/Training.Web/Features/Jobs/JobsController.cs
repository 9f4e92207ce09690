using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Jobs;

/// <summary>Jobs on vehicles, and who was competent on them on any day.</summary>
[Route("/jobs")]
[Authorize(Roles = Roles.Owner)]
public sealed class JobsController(Training.Records.Staffing.Jobs jobs, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The jobs and the form that plans one.</summary>
    [HttpGet]
    public Task<IActionResult> Index() => Page(new());

    /// <summary>Plans a job.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost]
    public async Task<IActionResult> Create(PlanJobForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var read = form.Read();
        if (!read.IsOk) return await Page(form, read.Fault);
        var outcome = await jobs.Make(await current.Get(), read.Value);
        if (outcome.IsOk) return Redirect($"/jobs/{outcome.Value}");
        return outcome.Fault == Refused.NotFound ? this.NotShown(outcome.Fault) : await Page(form, outcome.Fault);
    }

    /// <summary>One job: its crew, and how it stood on a day.</summary>
    /// <param name="job">The job.</param>
    /// <param name="on">The day, as <c>2026-11-25</c>; empty for none.</param>
    [HttpGet("{job}")]
    public async Task<IActionResult> Show(JobId job, string? on)
    {
        var actor = await current.Get();
        var found = await jobs.Look(actor, job);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var isDay = DayAsked.TryRead(on, out var day);
        var asked = day is { } one ? await jobs.On(actor, job, one) : default;
        if (!isDay) Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return View(new JobPage(found.Value)
        {
            Day = day is not null && asked.IsOk ? asked.Value : null,
            WrongDay = isDay ? null : words["“{0}” is no day. Write a day as 2026-03-14.", on!].Value,
        });
    }

    private async Task<IActionResult> Page(PlanJobForm form, Refusal? wrong = null)
    {
        var made = await jobs.List(await current.Get());
        if (!made.IsOk) return this.NotShown(made.Fault);
        if (wrong is not null) this.Reject(wrong);
        return View(nameof(Index), new JobsPage(made.Value, jobs.Kinds, jobs.Competencies, form));
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Overviews;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.People;

/// <summary>Who may do what, and the people themselves.</summary>
[Route("/people")]
[Authorize(Roles = Roles.Owner + "," + Roles.Administrator)]
public sealed class PeopleController(
    Training.Records.Accounts.People people, Overview overview, CompetencyRecords records, SameAnswers answers, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>People by competencies on a day.</summary>
    /// <param name="on">The day, as <c>2026-11-25</c>; empty for today.</param>
    [HttpGet]
    public Task<IActionResult> Index(string? on) => Page(new AddPersonForm(), on);

    /// <summary>Adds a person with a one-time password, which the next page shows once.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost]
    public async Task<IActionResult> Create(AddPersonForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var actor = await current.Get();
        var person = form.Person(actor);
        var outcome = await answers.Of(
            actor.Person, form.Key, $"{person.DisplayName}\n{person.UserName}\n{person.Shop}\n{string.Join(',', person.Roles)}", () => people.Add(actor, person));
        if (!outcome.IsOk) return await Page(form, null, outcome.Fault);
        TempData[PersonPage.GivenPassword] = outcome.Value.OneTimePassword;
        return this.Done(words["{0} is added.", form.DisplayName ?? ""], $"/people/{outcome.Value.Person}");
    }

    /// <summary>One person: their records and their way so far.</summary>
    /// <param name="person">The person.</param>
    [HttpGet("{person}")]
    [ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
    public async Task<IActionResult> Show(PersonId person)
    {
        var actor = await current.Get();
        var found = await people.Look(actor, person);
        if (!found.IsOk) return this.NotShown(found.Fault);
        var held = await records.Of(actor, person);
        var way = found.Value.Roles.Contains(Roles.Technician) ? await overview.WhatNext(actor, person) : default;
        return View(new PersonPage(found.Value, held.IsOk ? held.Value : [], way.IsOk ? way.Value : [], actor.Person == person)
        {
            OneTimePassword = TempData[PersonPage.GivenPassword] as string,
        });
    }

    private async Task<IActionResult> Page(AddPersonForm form, string? on, Refusal? wrong = null)
    {
        var actor = await current.Get();
        var isDay = DayAsked.TryRead(on, out var day);
        var table = await overview.WhoMayDoWhat(actor, day);
        if (!table.IsOk) return this.NotShown(table.Fault);
        var all = await people.List(actor);
        if (wrong is not null) this.Reject(wrong);
        if (!isDay) this.Reject(words["“{0}” is no day; this is today. Write a day as 2026-11-25.", on!], nameof(on));
        return View(nameof(Index), new PeoplePage(table.Value, all.IsOk ? all.Value : [], form)
        {
            Asked = day,
            Shops = actor.Is(Roles.Administrator) ? await people.Shops(actor) : null,
        });
    }
}

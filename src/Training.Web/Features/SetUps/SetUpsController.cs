using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Sequencing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SetUps;

/// <summary>The first administrator: once, by whoever reads the code on the server's console.</summary>
[AllowAnonymous]
[Route("/set-up")]
public sealed class SetUpsController(Training.Records.Accounts.People people, SetUpCode code, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The form; not found once there is an administrator.</summary>
    [HttpGet]
    public IActionResult Index() => code.Current is null ? NotFound() : View(new SetUpForm());

    /// <summary>Adds the first administrator.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost]
    public async Task<IActionResult> Create(SetUpForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (code.Current is null) return NotFound();
        Outcome<Training.Records.PersonId, Refusal> outcome = code.Fits(form.Code)
            ? await people.AddFirstAdministrator(form.DisplayName ?? "", form.UserName ?? "", form.Password ?? "")
            : new Refusal(words["This is not the code on the server's console. Read it there and type it again."]) { About = nameof(SetUpForm.Code) };
        if (!outcome.IsOk)
        {
            this.Reject(outcome.Fault, "Password");
            return View(nameof(Index), form);
        }

        code.End();
        TempData["Said"] = words["You are the administrator. Sign in."].Value;
        return Redirect("/sign-in");
    }
}

/// <summary>What is typed to become the first administrator.</summary>
public sealed class SetUpForm
{
    /// <summary>The code on the console.</summary>
    public string? Code { get; init; }

    /// <summary>The name that is shown.</summary>
    public string? DisplayName { get; init; }

    /// <summary>The name for signing in.</summary>
    public string? UserName { get; init; }

    /// <summary>The password.</summary>
    public string? Password { get; init; }
}

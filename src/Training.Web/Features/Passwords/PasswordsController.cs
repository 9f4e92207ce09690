using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Passwords;

/// <summary>Choosing one's own password.</summary>
[Authorize]
[Route("/password")]
public sealed class PasswordsController(
    Training.Records.Accounts.People people, CurrentActor current, UserManager<Person> users, SignInManager<Person> signIn, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The form.</summary>
    [HttpGet]
    public IActionResult Index() => View(new PasswordForm());

    /// <summary>Replaces the password.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost]
    public async Task<IActionResult> Update(PasswordForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var outcome = form.Chosen != form.Again
            ? new Training.Sequencing.Refusal(words["The two new passwords differ. Type the same one twice."]) { About = nameof(PasswordForm.Again) }
            : await people.ChoosePassword(await current.Get(), form.Current ?? "", form.Chosen ?? "");
        if (!outcome.IsOk)
        {
            this.Reject(outcome.Fault, "Chosen");
            return View(nameof(Index), form);
        }

        await signIn.RefreshSignInAsync((await users.GetUserAsync(User))!);
        TempData["Said"] = words["Your new password is set."].Value;
        return Redirect("/");
    }
}

/// <summary>What is typed to replace a password.</summary>
public sealed class PasswordForm
{
    /// <summary>The password until now.</summary>
    public string? Current { get; init; }

    /// <summary>The new one.</summary>
    public string? Chosen { get; init; }

    /// <summary>The new one again.</summary>
    public string? Again { get; init; }
}

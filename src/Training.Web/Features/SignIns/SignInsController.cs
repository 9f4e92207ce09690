using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Web.Features.Shared;

namespace Training.Web.Features.SignIns;

/// <summary>Signing in and out.</summary>
[AllowAnonymous]
public sealed class SignInsController(
    SignInManager<Person> signIn, Training.Records.Accounts.People people, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The form.</summary>
    /// <param name="to">The page that was wanted.</param>
    [HttpGet("/sign-in")]
    public IActionResult Index(string? to) => View(new SignInForm { To = to });

    /// <summary>Signs in. What was wrong, the name or the password, is not said.</summary>
    /// <param name="form">What was typed.</param>
    [HttpPost("/sign-in")]
    public async Task<IActionResult> Create(SignInForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var result = await signIn.PasswordSignInAsync(form.UserName ?? "", form.Password ?? "", isPersistent: true, lockoutOnFailure: true);
        if (result.Succeeded) await TakeLanguageAlong(form.UserName!);
        if (result.Succeeded) return Url.IsLocalUrl(form.To) ? LocalRedirect(form.To) : Redirect("/");
        this.Reject(result.IsLockedOut
            ? words["Too many wrong passwords. Wait five minutes, then try again."]
            : words["The name and the password do not fit together. Check both and try again."]);
        return View(nameof(Index), form);
    }

    // Whoever changed the language before signing in wants to go on in it; the next person at this device does not.
    private async Task TakeLanguageAlong(string userName)
    {
        if (Tongues.Find(Request.Cookies[Tongues.Cookie]) is not { } tongue) return;
        Response.Cookies.Delete(Tongues.Cookie);
        var person = await signIn.UserManager.FindByNameAsync(userName);
        if (person is not null && await people.ActorOf(person.Id) is { } actor) await people.ChooseLanguage(actor, tongue.Code);
    }

    /// <summary>Signs out.</summary>
    [HttpPost("/sign-out")]
    public async Task<IActionResult> Delete()
    {
        await signIn.SignOutAsync();
        return Redirect("/sign-in");
    }
}

/// <summary>What is typed to sign in.</summary>
public sealed class SignInForm
{
    /// <summary>The name for signing in.</summary>
    public string? UserName { get; init; }

    /// <summary>The password.</summary>
    public string? Password { get; init; }

    /// <summary>The page that was wanted.</summary>
    public string? To { get; init; }
}

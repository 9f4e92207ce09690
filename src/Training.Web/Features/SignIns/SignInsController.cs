using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.SignIns;

/// <summary>Signing in and out.</summary>
[AllowAnonymous]
public sealed class SignInsController(
    SignInManager<Person> signIn, WrongPasswords wrongPasswords, Training.Records.Accounts.People people, IStringLocalizer<Words> words) : Controller
{
    /// <summary>The form.</summary>
    /// <param name="to">The page that was wanted.</param>
    [HttpGet("/sign-in")]
    public IActionResult Index(string? to) => View(new SignInForm { To = to });

    /// <summary>
    /// Signs in. What was wrong (the name, the password, too many tries) is not said and cannot be told from how long it
    /// takes either: who is known here is nobody's business.
    /// </summary>
    /// <param name="form">What was typed.</param>
    [HttpPost("/sign-in")]
    public async Task<IActionResult> Create(SignInForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (await IsRight(form.UserName ?? "", form.Password ?? ""))
        {
            await TakeLanguageAlong(form.UserName!);
            return Url.IsLocalUrl(form.To) ? LocalRedirect(form.To) : Redirect("/");
        }

        this.Reject(words["The name and the password do not fit together, or there were too many wrong ones. Check both; after ten wrong ones, wait five minutes."]);
        return View(nameof(Index), form);
    }

    private async Task<bool> IsRight(string userName, string password)
    {
        var from = HttpContext.Connection.RemoteIpAddress;
        if (!wrongPasswords.Try(userName, from)) return false;
        var isKnown = await signIn.UserManager.FindByNameAsync(userName) is { PasswordHash: not null };
        var result = await signIn.PasswordSignInAsync(userName, password, isPersistent: true, lockoutOnFailure: true);
        if (result.Succeeded) wrongPasswords.Forget(userName, from);
        // Where no password was looked at, one that is nobody's is: for an unknown name, and while an account is locked.
        else if (!isKnown || result.IsLockedOut) wrongPasswords.LookAtNobodys(signIn.UserManager.PasswordHasher, password);
        return result.Succeeded;
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

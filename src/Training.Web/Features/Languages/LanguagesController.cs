using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Languages;

/// <summary>Choosing the language of the pages, with or without an account.</summary>
[AllowAnonymous]
public sealed class LanguagesController(Training.Records.Accounts.People people, CurrentActor current) : Controller
{
    /// <summary>Keeps the choice: with the person who is signed in, otherwise on the device until the browser is closed.</summary>
    /// <param name="language">The language, such as <c>es</c>.</param>
    /// <param name="back">The page to go back to.</param>
    [HttpPost("/language")]
    public async Task<IActionResult> Update(string? language, string? back)
    {
        if (Tongues.Find(language) is { } tongue)
        {
            if (await current.Find() is { } actor) await people.ChooseLanguage(actor, tongue.Code);
            else Response.Cookies.Append(Tongues.Cookie, tongue.Code, new() { HttpOnly = true, SameSite = SameSiteMode.Lax, IsEssential = true, Secure = Request.IsHttps });
        }

        return Url.IsLocalUrl(back) ? LocalRedirect(back) : Redirect("/");
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Translations;

/// <summary>A text of the content in another language, begun at the desk.</summary>
[Authorize(Roles = Roles.Trainer)]
public sealed class TranslationsController(
    Training.Records.Writing.Drafts drafts, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    /// <summary>Begins it, or finds the draft that somebody has begun of it.</summary>
    /// <param name="path">The file in English.</param>
    /// <param name="language">The language.</param>
    [HttpPost("/desk/translations")]
    public async Task<IActionResult> Create(string? path, string? language)
    {
        if (Tongues.Others.FirstOrDefault(tongue => tongue.Code == language) is not { } tongue) return this.NotShown(Refused.NotFound);
        var begun = await drafts.BeginTranslation(await current.Get(), path ?? "", tongue.Code);
        if (!begun.IsOk) return this.NotDone(begun.Fault, "/desk");
        return this.Done(
            begun.Value.BegunBy is { } by
                ? words["{0} has begun this text already. Here it is: you both write on this draft.", by]
                : words["Every text is still in English. The check says what is to be translated; write it in place of the English."],
            $"/desk/drafts/{begun.Value.Draft}");
    }
}

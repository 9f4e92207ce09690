using System.Text;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Interchange;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PeopleFiles;

/// <summary>Many technicians at once from a file: first a look at what it would do, then all of them or none.</summary>
/// <param name="intake">Reads and takes in.</param>
/// <param name="people">The shops.</param>
/// <param name="answers">The answers to forms that are sent twice.</param>
/// <param name="current">Who asks.</param>
/// <param name="words">The sentences.</param>
[Route("/people/file")]
[Authorize(Roles = Roles.Owner + "," + Roles.Administrator)]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class PeopleFilesController(
    PeopleIntake intake, Training.Records.Accounts.People people, SameAnswers answers, CurrentActor current, IStringLocalizer<Words> words) : Controller
{
    private const int MostBytes = 1 << 20;
    private static readonly string[] Languages = [.. Tongues.All.Select(tongue => tongue.Code)];

    /// <summary>The form.</summary>
    [HttpGet]
    public async Task<IActionResult> Index() => View(await Page(new PeopleFileForm()));

    /// <summary>Says what a file would bring and everything that is wrong with it. Nothing is changed.</summary>
    /// <param name="form">The file or its text, and the shop.</param>
    [HttpPost("look")]
    [RequestSizeLimit(2 * MostBytes)]
    public async Task<IActionResult> Look(PeopleFileForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (form.File is { Length: > MostBytes }) return await Wrong(form, words["The file is too large: at most one megabyte."], nameof(form.File));
        if (form.File is { Length: > 0 } file)
        {
            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes);
            try
            {
                form.Text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes.ToArray());
            }
            catch (DecoderFallbackException)
            {
                return await Wrong(form, words["The file is not in UTF-8. Save it as “CSV UTF-8” and choose it again."], nameof(form.File));
            }
        }

        if (await ShopOf(form) is not { } shop) return await Wrong(form, words["Choose the shop that they belong to."], nameof(form.Shop));
        var looked = await intake.Preview(await current.Get(), shop, form.Text, Languages);
        if (!looked.IsOk) return looked.Fault == Refused.NotFound ? this.NotShown(looked.Fault) : await Wrong(form, words.Say(looked.Fault), form.File is null ? nameof(form.Text) : nameof(form.File));
        if (looked.Value.Problems.Count > 0) Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return View(nameof(Index), await Page(form) with { Preview = looked.Value });
    }

    /// <summary>Takes all of them in; the page shows their one-time passwords once.</summary>
    /// <param name="form">The text that was looked at, its hash and the shop.</param>
    [HttpPost]
    [RequestSizeLimit(2 * MostBytes)]
    public async Task<IActionResult> Create(PeopleFileForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        if (await ShopOf(form) is not { } shop) return await Wrong(form, words["Choose the shop that they belong to."], nameof(form.Shop));
        if (!ContentHash.TryParse(form.Hash, out var hash)) return await Wrong(form, words["Look at the file first."]);
        var actor = await current.Get();
        var taken = await answers.Of(actor.Person, form.Key, $"{shop} {hash}", () => intake.TakeIn(actor, shop, form.Text, hash, Languages));
        if (taken.IsOk) return View("Added", taken.Value);
        return taken.Fault == Refused.NotFound ? this.NotShown(taken.Fault) : await Wrong(form, words.Say(taken.Fault));
    }

    private async Task<ShopId?> ShopOf(PeopleFileForm form)
    {
        var actor = await current.Get();
        return actor.Is(Roles.Administrator) ? form.Shop is { } chosen ? new ShopId(chosen) : null : actor.Shop;
    }

    private async Task<IActionResult> Wrong(PeopleFileForm form, string sentence, string? field = null)
    {
        this.Reject(sentence, field);
        return View(nameof(Index), await Page(form));
    }

    private async Task<PeopleFilePage> Page(PeopleFileForm form)
    {
        var actor = await current.Get();
        return new(form, actor.Is(Roles.Administrator) ? await people.Shops(actor) : null);
    }
}

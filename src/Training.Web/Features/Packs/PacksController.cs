using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Localization;
using Training.Content.Modules;
using Training.Content.Packing;
using Training.Records.Accounts;
using Training.Records.Publishing;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Packs;

/// <summary>Content that is taken elsewhere, and content that comes from elsewhere: first a look at what it would bring.</summary>
/// <param name="library">What is served.</param>
/// <param name="drafts">What is in work.</param>
/// <param name="looked">The packs that people look at.</param>
/// <param name="checking">Checks them.</param>
/// <param name="rooms">Knows who the provider is.</param>
/// <param name="settings">Has the line of the licence (<c>Provider:Licence</c>).</param>
/// <param name="current">Who asks.</param>
/// <param name="words">The sentences.</param>
[Route("/packs")]
[Authorize(Roles = Roles.Trainer)]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class PacksController(
    Library library, Training.Records.Writing.Drafts drafts, LookedAtPacks looked, PackChecking checking, Rooms rooms, IConfiguration settings, CurrentActor current, IStringLocalizer<Words> words)
    : Controller
{
    [System.ComponentModel.Localizable(true)]
    private static string TooLong => "It takes too long to check this pack, or another one is still being checked.";

    /// <summary>What can be taken out, and the form for what comes in.</summary>
    [HttpGet]
    public IActionResult Index() => View(new PacksPage(library.Current.Content));

    /// <summary>A pack of the chosen modules with everything that they need.</summary>
    /// <param name="modules">The modules.</param>
    [HttpGet("content.zip")]
    public IActionResult Show(string[]? modules)
    {
        var files = PackChoice.Of(library.Current.Content, [.. (modules ?? []).Select(module => new ModuleId(module ?? ""))]);
        if (!files.IsOk) return this.NotDone(files.Fault, "/packs");
        var licence = settings["Provider:Licence"] ?? $"Ask {rooms.Provider} before you pass it on.";
        return File(Pack.Of(files.Value, rooms.Provider, licence, modules!).Write(), "application/zip", "content.zip");
    }

    /// <summary>Says what a pack would bring. Nothing is changed.</summary>
    /// <param name="file">The pack.</param>
    [HttpPost("look")]
    [RequestSizeLimit(Pack.LargestSize + (64 * 1024))]
    public async Task<IActionResult> Look(IFormFile? file)
    {
        if (file is null or { Length: 0 }) return Wrong(words["Choose the file of the pack first."]);
        if (file.Length > Pack.LargestSize) return Wrong(words["The pack is larger than 16 MiB."]);
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes);
        var read = Pack.Read(bytes.ToArray());
        if (!read.IsOk) return Wrong(words.Say(read.Fault));
        var actor = await current.Get();
        var here = await drafts.Files(actor);
        if (!here.IsOk) return this.NotShown(here.Fault);
        if (await checking.Look(read.Value, here.Value) is not { } intake) return Wrong(words[TooLong]);
        looked.Keep(actor.Person, read.Value);
        return View(nameof(Index), new PacksPage(library.Current.Content) { Intake = intake });
    }

    /// <summary>Begins a draft of each file of the pack that is new or differs: of all of them or of none. Nothing is published.</summary>
    [HttpPost("drafts")]
    public async Task<IActionResult> Create()
    {
        var actor = await current.Get();
        if (looked.Of(actor.Person) is not { } pack) return Wrong(words["It is too long ago that you looked at the pack: choose the file again."]);
        var here = await drafts.Files(actor);
        if (!here.IsOk) return this.NotShown(here.Fault);
        if (await checking.Look(pack, here.Value) is not { ToWrite: var files }) return Wrong(words[TooLong]);
        // A form that is sent twice finds everything brought already.
        if (files.Count == 0) return this.Done(words["The pack brings nothing that is not here"], "/desk");
        var brought = await drafts.Bring(actor, files);
        if (!brought.IsOk) return this.NotDone(brought.Fault, "/packs");
        var said = words["Drafts on the desk now: {0}. Nothing is published before somebody publishes them.", brought.Value.Drafts.Count].Value;
        if (brought.Value.Beside > 0) said += " " + words["Texts that were kept beside a draft that somebody had begun: {0}.", brought.Value.Beside];
        return this.Done(said, "/desk");
    }

    private ViewResult Wrong(string sentence)
    {
        this.Reject(sentence, "file");
        return View(nameof(Index), new PacksPage(library.Current.Content));
    }
}

using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records.Accounts;
using Training.Records.Learning;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Modules;

/// <summary>The lessons.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner}")]
[ShutDuringPaper]
public sealed class ModulesController(Lessons lessons, Reading reading, CurrentActor current, CurrentReader reader) : Controller
{
    /// <summary>All lessons, with those that are read.</summary>
    [HttpGet("/modules")]
    public async Task<IActionResult> Index()
    {
        var read = await Read();
        var language = await reader.Language();
        return View(lessons.Modules.Select(module => new ModuleLine(
            module.Id, module.In(language).Title, module.Minutes, read.FirstOrDefault(line => line.Module == module.Id))).ToList());
    }

    /// <summary>A lesson.</summary>
    /// <param name="module">The module.</param>
    /// <param name="language">The language to read it in; null for the reader's own.</param>
    /// <param name="check">The check question that was answered; null for none.</param>
    /// <param name="answer">The answer that was given to it.</param>
    [HttpGet("/modules/{module}")]
    public async Task<IActionResult> Show(string module, string? language, int? check, int? answer)
    {
        if (lessons.Find(module) is not { } found) return NotFound();
        var wanted = language ?? await reader.Language();
        return View(new ModulePage(found, lessons.Renderer.Render(found, wanted), wanted)
        {
            Given = check is { } number && answer is { } place && lessons.Renderer.Reply(found, wanted, number, place) is { } reply
                ? new(number, place, reply)
                : null,
            Read = (await Read()).FirstOrDefault(line => line.Module == found.Id),
            Charts = lessons.ChartsOf(found, wanted),
            Questions = [.. lessons.QuestionsOf(found)],
            Next = lessons.Modules.SkipWhile(other => other.Id != found.Id).Skip(1).FirstOrDefault(),
            Zone = await reader.Zone(),
        });
    }

    private async Task<IReadOnlyList<ModuleReadView>> Read()
    {
        var actor = await current.Get();
        var read = await reading.Of(actor, actor.Person);
        return read.IsOk ? read.Value : [];
    }
}

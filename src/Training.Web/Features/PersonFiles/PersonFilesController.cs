using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Interchange;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.PersonFiles;

/// <summary>Everything that is held about a person, for themself and for administrators. It has verdicts in it, so it is shut while a paper runs.</summary>
[Authorize(Roles = $"{Roles.Technician},{Roles.Trainer},{Roles.Examiner},{Roles.Owner},{Roles.Administrator}")]
[ShutDuringPaper]
[ResponseCache(NoStore = true, Location = ResponseCacheLocation.None)]
public sealed class PersonFilesController(PersonFile files, CurrentActor current) : Controller
{
    /// <summary>One's own.</summary>
    [HttpGet("/everything-about-me.json")]
    public async Task<IActionResult> Own()
    {
        var actor = await current.Get();
        return Made(await files.Write(actor, actor.Person));
    }

    /// <summary>Somebody else's.</summary>
    /// <param name="person">The person.</param>
    [HttpGet("/people/{person}/everything.json")]
    public async Task<IActionResult> Of(PersonId person) => Made(await files.Write(await current.Get(), person));

    private IActionResult Made(Training.Sequencing.Outcome<byte[], Training.Sequencing.Refusal> file) =>
        file.IsOk ? File(file.Value, "application/json; charset=utf-8", "everything.json") : this.NotShown(file.Fault);
}

using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.Extensions.Localization;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Web.Features.Shared;

namespace Training.Web.Startup;

/// <summary>
/// Pages that could answer a question of a paper (lessons, rules, orders, verdicts, the desk) are shut to whoever sits one while
/// its time runs, whatever else they are; they lead back to
/// it and say why.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ShutDuringPaperAttribute() : TypeFilterAttribute(typeof(PaperFirst));

internal sealed class PaperFirst(
    Papers papers, CurrentActor current, ITempDataDictionaryFactory said, IStringLocalizer<Words> words) : IAsyncActionFilter
{
    public async Task OnActionExecutionAsync(ActionExecutingContext context, ActionExecutionDelegate next)
    {
        if (await OpenPaper(context) is not { } paper)
        {
            await next();
            return;
        }

        said.GetTempData(context.HttpContext)["SaidWrong"] =
            words["Lessons, practice and earlier verdicts are shut while the time of your paper runs. They open again once it is handed in."].Value;
        context.Result = new RedirectResult($"/papers/{paper}");
    }

    private async Task<PaperId?> OpenPaper(ActionExecutingContext context)
    {
        if (!context.HttpContext.User.IsInRole(Roles.Technician)) return null;
        var open = (await papers.Mine(await current.Get())).FirstOrDefault(paper => paper.State == PaperState.Open);
        var asked = context.RouteData.Values["paper"] as string;
        return open is null || open.Id.ToString() == asked ? null : open.Id;
    }
}

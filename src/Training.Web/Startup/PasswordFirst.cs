using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace Training.Web.Startup;

/// <summary>Somebody with a password that another gave them chooses their own before anything else.</summary>
internal sealed class PasswordFirst : IActionFilter
{
    public void OnActionExecuting(ActionExecutingContext context)
    {
        var request = context.HttpContext.Request;
        if (context.HttpContext.User.HasClaim(claim => claim.Type == ClaimsOfPerson.OneTimePassword)
            && !request.Path.StartsWithSegments("/password", StringComparison.Ordinal)
            && !request.Path.StartsWithSegments("/language", StringComparison.Ordinal)
            && !request.Path.StartsWithSegments("/sign-out", StringComparison.Ordinal))
        {
            context.Result = new RedirectResult("/password");
        }
    }

    public void OnActionExecuted(ActionExecutedContext context)
    {
    }
}

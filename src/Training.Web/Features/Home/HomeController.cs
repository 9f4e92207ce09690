using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Training.Web.Features.Shared;
using Training.Web.Startup;

namespace Training.Web.Features.Home;

/// <summary>The first page: each person is taken to the room that answers their first question.</summary>
[AllowAnonymous]
public sealed class HomeController(SetUpCode code) : Controller
{
    /// <summary>Leads on.</summary>
    [HttpGet("/")]
    public IActionResult Index()
    {
        if (User.Identity?.IsAuthenticated != true) return Redirect(code.Current is null ? "/sign-in" : "/set-up");
        return Redirect(Rooms.For(User).Select(room => room.Address).FirstOrDefault("/password"));
    }
}

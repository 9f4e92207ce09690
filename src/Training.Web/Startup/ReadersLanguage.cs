using Microsoft.AspNetCore.Localization;
using Training.Web.Features.Shared;

namespace Training.Web.Startup;

/// <summary>
/// In which language a page is written: in the one that the signed-in person chose; otherwise in the one that was
/// chosen on this device; where neither says anything, in the one that the browser asks for.
/// </summary>
internal sealed class ReadersLanguage : RequestCultureProvider
{
    public override async Task<ProviderCultureResult?> DetermineProviderCultureResult(HttpContext httpContext)
    {
        var code = httpContext.User.Identity?.IsAuthenticated == true
            ? await httpContext.RequestServices.GetRequiredService<CurrentReader>().Chosen()
            : httpContext.Request.Cookies[Tongues.Cookie];
        return Tongues.Find(code) is { } tongue ? new ProviderCultureResult(tongue.Culture) : null;
    }
}

namespace Training.Web.Startup;

/// <summary>Headers that go with every page: nothing is loaded from elsewhere, nothing is framed, nothing is guessed.</summary>
internal static class SecurityHeaders
{
    private const string Page =
        "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; "
        + "form-action 'self'; frame-ancestors 'none'; base-uri 'none'; manifest-src 'self'";

    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Page;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        return next();
    });
}

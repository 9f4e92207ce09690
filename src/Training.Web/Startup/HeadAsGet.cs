namespace Training.Web.Startup;

/// <summary>
/// Whoever asks for the head of a page alone (HEAD, RFC 9110) gets what GET would say, without the page. Calendar programs
/// and what looks at links in mails ask so; led to the sign-in, they would take an open link for a closed one.
/// </summary>
internal static class HeadAsGet
{
    public static IApplicationBuilder UseHeadAsGet(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next();
            return;
        }

        var body = context.Response.Body;
        context.Request.Method = HttpMethods.Get;
        context.Response.Body = Stream.Null;
        try
        {
            await next();
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
            context.Response.Body = body;
        }
    });
}

using System.Net;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.HostFiltering;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;

namespace Training.Web.Startup;

/// <summary>
/// How people reach the house through a proxy with TLS. Where <c>Provider:Address</c> is https every request counts as one of
/// that address, whatever the proxy says: cookies go over TLS alone, redirects lead there, other hosts are refused. In
/// Development nothing of this holds.
/// </summary>
internal static class SeenFromOutside
{
    // Whatever watches the server from the same machine asks it by these.
    private static readonly string[] Own = ["localhost", "127.0.0.1", "[::1]"];

    public static void AddOutside(this WebApplicationBuilder builder)
    {
        if (builder.Environment.IsDevelopment()) return;
        var (services, settings) = (builder.Services, builder.Configuration);
        services.Configure<ForwardedHeadersOptions>(options =>
        {
            options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
            // Loopback is known without being named.
            foreach (var proxy in (settings["Proxy:Addresses"] ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
                options.KnownProxies.Add(IPAddress.Parse(proxy));
        });
        services.Configure<AntiforgeryOptions>(options => options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest);
        services.Configure<CookieTempDataProviderOptions>(options => options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest);
        if (AddressOf(settings) is not { } address) return;
        services.AddHsts(options => options.MaxAge = TimeSpan.FromDays(365));
        services.Configure<AntiforgeryOptions>(options => options.Cookie.SecurePolicy = CookieSecurePolicy.Always);
        services.Configure<CookieTempDataProviderOptions>(options => options.Cookie.SecurePolicy = CookieSecurePolicy.Always);
        services.Configure<CookieAuthenticationOptions>(IdentityConstants.ApplicationScheme, options => options.Cookie.SecurePolicy = CookieSecurePolicy.Always);
        // Whoever names hosts, such as one that a proxy asks by, means them.
        if (settings["AllowedHosts"] is null or "*") services.PostConfigure<HostFilteringOptions>(options => options.AllowedHosts = [address.IdnHost, .. Own]);
    }

    public static void UseOutside(this WebApplication app)
    {
        if (app.Environment.IsDevelopment()) return;
        app.UseForwardedHeaders();
        if (AddressOf(app.Configuration) is not { } address) return;
        var host = address.IsDefaultPort ? new HostString(address.IdnHost) : new HostString(address.IdnHost, address.Port);
        app.Use((context, next) =>
        {
            (context.Request.Scheme, context.Request.Host) = (Uri.UriSchemeHttps, host);
            return next();
        });
        app.UseHsts();
    }

    private static Uri? AddressOf(IConfiguration settings) =>
        Uri.TryCreate(settings["Provider:Address"]?.Trim(), UriKind.Absolute, out var address) && address.Scheme == Uri.UriSchemeHttps ? address : null;
}

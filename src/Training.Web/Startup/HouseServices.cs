using System.Text.Encodings.Web;
using System.Text.Unicode;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Localization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Razor;
using Microsoft.Extensions.Localization;
using Training.Content.Rendering;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Issuers;
using Training.Records.Storage;
using Training.Web.Features.Shared;
using Training.Web.Printing;
using Training.Web.Reminding;

namespace Training.Web.Startup;

/// <summary>How the web server is put together.</summary>
internal static class HouseServices
{
    public static void AddHouse(this WebApplicationBuilder builder, string root)
    {
        var services = builder.Services;
        var settings = builder.Configuration;
        var house = new House(settings["Content:Root"] ?? root, settings["Data:Folder"] ?? Path.Combine(root, "data"));
        services.AddSingleton(house);
        services.AddTrainingRecords($"Data Source={house.Database}");
        services.AddSingleton<SetUpCode>().AddSingleton<Rooms>().AddSingleton<ILessonDrawings, LessonDrawings>();
        services.AddHttpContextAccessor().AddScoped<CurrentActor>().AddScoped<CurrentReader>().AddScoped<Lessons>();
        services.AddSingleton<ProofLink>().AddSingleton<LookedAtPacks>().AddSingleton<SameAnswers>().AddSingleton<PackChecking>().AddScoped(provider => new ProofPaper(
            provider.GetRequiredService<Rooms>(), provider.GetRequiredService<IStringLocalizer<Words>>(), provider.GetRequiredService<Lessons>().Titled));
        services.AddSingleton<ContentWatch>().AddHostedService(provider => provider.GetRequiredService<ContentWatch>());
        services.AddScoped<ReminderSentences>().AddScoped<ReminderCalendar>().AddScoped<ReminderPost>().AddSingleton<MailSettings>();
        services.AddHostedService<PaperClock>().AddHostedService<CheckpointClock>().AddHostedService<ReminderClock>();
        services.AddSingleton<ProviderPlace>().AddSingleton(provider => new IssuerPlace(
            provider.GetRequiredService<Rooms>().Provider, house.SigningKey, provider.GetRequiredService<ProviderPlace>().Address));
        services.AddSingleton(HtmlEncoder.Create(UnicodeRanges.All));
        services.AddSingleton<IStringLocalizer<Words>, WordBook>();
        AddSignIn(services, house);
        builder.AddOutside();
        AddPages(services);
    }

    public static void UseHouse(this WebApplication app)
    {
        app.UseOutside();
        app.UseSecurityHeaders();
        app.UseExceptionHandler("/faults/500");
        app.UseStatusCodePagesWithReExecute("/faults/{0}");
        app.UseStaticFiles();
        app.UseHeadAsGet();
        app.UseRouting();
        app.UseAuthentication();
        app.UseRequestLocalization(options =>
        {
            string[] cultures = [.. Tongues.All.Select(tongue => tongue.Culture)];
            options.SetDefaultCulture(cultures[0]).AddSupportedCultures(cultures).AddSupportedUICultures(cultures);
            options.RequestCultureProviders = [new ReadersLanguage(), new AcceptLanguageHeaderRequestCultureProvider()];
        });
        app.UseAuthorization();
        app.UseReadableForms();
        app.MapControllers();
    }

    private static void AddSignIn(IServiceCollection services, House house)
    {
        services.AddIdentity<Person, Role>(options =>
        {
            // NIST SP 800-63B: length counts, not the mixture; 15 characters where the password stands alone.
            options.Password.RequiredLength = 15;
            options.Password.RequireDigit = options.Password.RequireLowercase = options.Password.RequireUppercase = false;
            options.Password.RequireNonAlphanumeric = false;
            // NIST SP 800-63B: no more than 100 wrong passwords one after another for an account, wherever they come from.
            // Who tries from one place is slowed down long before (WrongPasswords).
            options.Lockout.MaxFailedAccessAttempts = 100;
            options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromHours(1);
        }).AddEntityFrameworkStores<TrainingDbContext>().AddDefaultTokenProviders().AddClaimsPrincipalFactory<ClaimsOfPerson>();
        services.AddSingleton<WrongPasswords>().AddScoped<ISecurityStampValidator, StampOnEveryRequest>();
        services.ConfigureApplicationCookie(options =>
        {
            options.LoginPath = "/sign-in";
            options.AccessDeniedPath = "/faults/403";
            options.ReturnUrlParameter = "to";
            options.Cookie.Name = "training-sign-in";
            options.Cookie.HttpOnly = true;
            options.Cookie.SameSite = SameSiteMode.Lax;
            options.ExpireTimeSpan = TimeSpan.FromHours(12);
            options.Events.OnRedirectToAccessDenied = context =>
            {
                context.Response.StatusCode = StatusCodes.Status403Forbidden;
                return Task.CompletedTask;
            };
        });
        services.AddDataProtection().SetApplicationName("training").PersistKeysToFileSystem(Directory.CreateDirectory(house.Keys));
        // Every route says who may use it, and a test holds that; should one ever say nothing, strangers stay out.
        services.AddAuthorizationBuilder()
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
    }

    private static void AddPages(IServiceCollection services)
    {
        services.AddRouting(options => options.LowercaseUrls = true);
        services.AddAntiforgery(options =>
        {
            options.Cookie.Name = "training-form";
            options.FormFieldName = "form-token";
            options.HeaderName = "form-token";
        });
        services.AddControllersWithViews(options =>
        {
            options.Filters.Add(new AutoValidateAntiforgeryTokenAttribute());
            options.Filters.Add(new PasswordFirst());
        });
        services.Configure<RazorViewEngineOptions>(options =>
        {
            options.ViewLocationFormats.Clear();
            options.ViewLocationFormats.Add("/Features/{1}/{0}.cshtml");
            options.ViewLocationFormats.Add("/Features/Shared/{0}.cshtml");
        });
    }
}

using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Reminding;
using Training.Web.Reminding;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Reminding;

public sealed class ReminderPostTests
{
    [Fact]
    public async Task The_weekly_mail_reaches_the_owner_once_in_their_language_with_the_name_that_was_kept_for_it()
    {
        await using var mail = new MailHouse();
        await using var house = new TrainingHouse();
        await using var clocked = Clocked(house, mail.Port);
        var hollis = new Visitor(clocked.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = true }));
        var page = await hollis.Get("/sign-in");
        await hollis.Post("/sign-in", page.TokenIn(), ("UserName", "hollis"), ("Password", Records.Demo.DemoWorld.Password));
        page = await hollis.Get("/reminders");
        Assert.Contains("hollis@quillmoor.example", (await hollis.Follow(await hollis.Post("/reminders/mail", page.TokenIn(), ("Address", "hollis@quillmoor.example")))).Said(), StringComparison.Ordinal);
        await hollis.Post("/language", page.TokenIn(), ("Language", "es"), ("language", "es"));

        mail.Refuses = true;
        var (sent, fault) = await Send(clocked);
        Assert.Equal(0, sent);
        Assert.NotNull(fault);
        Assert.Empty(mail.Taken);
        string kept;
        await using (var scope = clocked.Services.CreateAsyncScope())
            kept = Assert.Single(await scope.ServiceProvider.GetRequiredService<WeeklyMails>().Due("localhost")).MessageId;

        mail.Refuses = false;
        Assert.Equal((1, null), await Send(clocked));
        Assert.Equal((0, null), await Send(clocked));
        var taken = Assert.Single(mail.Taken);
        Assert.Equal(kept, taken.MessageId);
        Assert.Equal("hollis@quillmoor.example", Assert.Single(taken.To.Mailboxes).Address);
        Assert.Equal("records@eastvale.example", Assert.Single(taken.From.Mailboxes).Address);
        Assert.Equal("text/plain", taken.Body!.ContentType.MimeType);
        Assert.Contains("- ", taken.TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_mail_server_nothing_is_sent_and_nothing_fails()
    {
        await using var house = new TrainingHouse();
        await using var scope = house.Services.CreateAsyncScope();
        Assert.Equal((0, null), await scope.ServiceProvider.GetRequiredService<ReminderPost>().SendDue(CancellationToken.None));
    }

    private static async Task<(int, Exception?)> Send(WebApplicationFactory<Program> house)
    {
        await using var scope = house.Services.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<ReminderPost>().SendDue(TestContext.Current.CancellationToken);
    }

    // The house's own clock of the mails would send by itself: the test does.
    private static WebApplicationFactory<Program> Clocked(TrainingHouse house, int port) => house.WithWebHostBuilder(builder =>
    {
        builder.UseSetting("Mail:Server", "127.0.0.1");
        builder.UseSetting("Mail:Port", port.ToString(System.Globalization.CultureInfo.InvariantCulture));
        builder.UseSetting("Mail:From", "records@eastvale.example");
        builder.UseSetting("Mail:Encryption", "none");
        builder.ConfigureTestServices(services =>
        {
            services.AddSingleton<TimeProvider>(new Noon());
            services.Remove(services.Single(service => service.ImplementationType == typeof(Startup.ReminderClock)));
        });
    });

    /// <summary>Today at noon, so that it is after six whenever the test runs.</summary>
    private sealed class Noon : TimeProvider
    {
        private readonly DateTimeOffset noon = new(System.GetUtcNow().Date.AddHours(12), TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => noon;
    }
}

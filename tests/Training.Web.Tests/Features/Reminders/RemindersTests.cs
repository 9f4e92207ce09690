using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Reminders;

[Collection(SharedHouse.Name)]
public sealed class RemindersTests(TrainingHouse house)
{
    [Fact]
    public async Task An_owners_page_names_the_people_and_leads_to_them()
    {
        var page = await (await house.SignedIn("hollis")).Get("/reminders");
        Assert.NotEmpty(page.QuerySelectorAll("#shop ~ ul a[href^='/people/'], #shop ~ ul a[href^='/coverage'], #shop ~ ul a[href^='/jobs/']"));
    }

    [Fact]
    public async Task A_technicians_page_shows_the_own_records_alone()
    {
        var page = await (await house.SignedIn("amara")).Get("/reminders");
        Assert.Null(page.QuerySelector("#shop"));
        Assert.NotNull(page.QuerySelector("#own"));
    }

    [Fact]
    public async Task A_calendar_address_is_shown_once_opens_without_a_sign_in_and_can_be_ended()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Get("/reminders");
        page = await hollis.Follow(await hollis.Post("/reminders/calendar", page.TokenIn()));
        var address = new Uri(page.QuerySelector("#address")!.GetAttribute("value")!).AbsolutePath;
        Assert.Null((await hollis.Get("/reminders")).QuerySelector("#address"));

        var stranger = house.Stranger();
        var answer = await stranger.Ask(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/calendar", answer.Content.Headers.ContentType!.MediaType);
        using var head = new HttpRequestMessage(HttpMethod.Head, address);
        Assert.Equal(HttpStatusCode.OK, (await stranger.Client.SendAsync(head, TestContext.Current.CancellationToken)).StatusCode);
        Assert.True(answer.Headers.CacheControl!.NoStore);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        var calendar = Ical.Net.Calendar.Load(text)!;
        Assert.NotEmpty(calendar.Events);
        Assert.All(calendar.Events, happening =>
        {
            Assert.False(happening.DtStart!.HasTime);
            Assert.EndsWith("@training", happening.Uid, StringComparison.Ordinal);
        });
        Assert.Distinct(calendar.Events.Select(happening => happening.Uid));
        Assert.Contains("DTSTART;VALUE=DATE:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Larkfield", text, StringComparison.Ordinal);
        var again = Ical.Net.Calendar.Load(await (await stranger.Ask(address)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken))!;
        Assert.Equal(calendar.Events.Select(happening => happening.Uid), again.Events.Select(happening => happening.Uid));

        await hollis.Post("/reminders/calendar/ending", page.TokenIn());
        Assert.Equal(HttpStatusCode.NotFound, (await stranger.Ask(address)).StatusCode);
    }

    [Fact]
    public async Task What_is_no_mail_address_is_told_in_a_sentence()
    {
        var hollis = await house.SignedIn("hollis");
        var page = await hollis.Get("/reminders");
        page = await hollis.Follow(await hollis.Post("/reminders/mail", page.TokenIn(), ("Address", "hollis")));
        Assert.Contains("no mail address", page.Said(), StringComparison.Ordinal);
    }
}

using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Languages;

/// <summary>The language of the pages is the reader's choice.</summary>
[Collection(SharedHouse.Name)]
public sealed class LanguagesTests(TrainingHouse house)
{
    [Fact]
    public async Task A_stranger_reads_in_the_language_that_the_browser_asks_for()
    {
        var stranger = house.Stranger();
        stranger.Client.DefaultRequestHeaders.AcceptLanguage.ParseAdd("hi, en;q=0.5");
        var page = await stranger.Get("/sign-in");
        Assert.Equal("hi", page.DocumentElement.GetAttribute("lang"));
        Assert.Equal("साइन इन करें", page.QuerySelector("h1")!.TextContent);
    }

    [Fact]
    public async Task A_language_that_the_interface_does_not_speak_gives_English()
    {
        var stranger = house.Stranger();
        stranger.Client.DefaultRequestHeaders.AcceptLanguage.ParseAdd("fi");
        Assert.Equal("en", (await stranger.Get("/sign-in")).DocumentElement.GetAttribute("lang"));
    }

    [Fact]
    public async Task A_stranger_who_chooses_a_language_keeps_it_on_this_device_and_is_led_back()
    {
        var stranger = house.Stranger();
        var answer = await stranger.Post("/language", (await stranger.Get("/sign-in?to=%2Fnext")).TokenIn(), ("language", "es"), ("back", "/sign-in?to=%2Fnext"));
        Assert.Equal("/sign-in?to=%2Fnext", answer.Headers.Location!.ToString());
        var page = await stranger.Get("/sign-in");
        Assert.Equal("es", page.DocumentElement.GetAttribute("lang"));
        Assert.Equal("Español", page.QuerySelector("[aria-pressed=true]")!.TextContent);
    }

    [Fact]
    public async Task The_choice_is_the_persons_own_on_every_device()
    {
        var (visitor, _) = await house.NewTechnician();
        await visitor.Post("/language", (await visitor.Get("/next")).TokenIn(), ("language", "es"), ("back", "/next"));
        Assert.Equal("es", (await visitor.Get("/next")).DocumentElement.GetAttribute("lang"));
        Assert.Equal("en", (await house.Stranger().Get("/sign-in")).DocumentElement.GetAttribute("lang"));
    }

    [Fact]
    public async Task A_language_chosen_before_signing_in_goes_along_and_is_not_left_for_the_next_person()
    {
        var (known, person) = await house.NewTechnician();
        var name = (await house.With(services => Task.FromResult(NameOf(services, person))))!;
        var device = house.Stranger();
        await device.Post("/language", (await device.Get("/sign-in")).TokenIn(), ("language", "hi"), ("back", "/sign-in"));
        await device.Post("/sign-in", (await device.Get("/sign-in")).TokenIn(), ("UserName", name), ("Password", "a password of their own"));
        Assert.Equal("hi", (await device.Get("/next")).DocumentElement.GetAttribute("lang"));
        Assert.Equal("hi", (await known.Get("/next")).DocumentElement.GetAttribute("lang"));
        await device.Post("/sign-out", (await device.Get("/next")).TokenIn());
        Assert.Equal("en", (await device.Get("/sign-in")).DocumentElement.GetAttribute("lang"));
    }

    [Fact]
    public async Task Nobody_is_led_back_to_another_house()
    {
        var stranger = house.Stranger();
        var answer = await stranger.Post("/language", (await stranger.Get("/sign-in")).TokenIn(), ("language", "es"), ("back", "https://elsewhere.example/"));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal("/", answer.Headers.Location!.ToString());
    }

    [Fact]
    public async Task A_refusal_from_deep_down_is_told_in_the_readers_language()
    {
        var visitor = await house.SignedIn("ifeoma");
        await visitor.Post("/language", (await visitor.Get("/shops")).TokenIn(), ("language", "es"), ("back", "/shops"));
        var answer = await visitor.Post("/shops", (await visitor.Get("/shops")).TokenIn(), ("Name", "Taller Uno"), ("TimeZone", "Nowhere/Here"));
        Assert.StartsWith("No existe la zona horaria «Nowhere/Here»", (await Visitor.Page(answer)).QuerySelector(".wrong")!.TextContent, StringComparison.Ordinal);
        await visitor.Post("/language", (await visitor.Get("/shops")).TokenIn(), ("language", "en"), ("back", "/shops"));
    }

    private static string? NameOf(IServiceProvider services, Training.Records.PersonId person) =>
        ((Microsoft.AspNetCore.Identity.UserManager<Training.Records.Accounts.Person>)services.GetService(
            typeof(Microsoft.AspNetCore.Identity.UserManager<Training.Records.Accounts.Person>))!)
        .Users.Single(user => user.Id == person).UserName;
}

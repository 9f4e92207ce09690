using System.Net;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Faults;

[Collection(SharedHouse.Name)]
public sealed class FaultsTests(TrainingHouse house)
{
    [Fact]
    public async Task A_form_without_its_token_is_told_in_words_whatever_its_fields_are_called()
    {
        var answer = await house.Stranger().Post("/sign-in", token: null, ("UserName", "bao"), ("code", "x"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("nothing was changed", (await Visitor.Page(answer)).Body!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bao\0", "x")]
    [InlineData("bao", "x\0")]
    public async Task A_sign_that_ends_texts_elsewhere_is_the_senders_fault_and_told_so(string name, string password)
    {
        var stranger = house.Stranger();
        var answer = await stranger.Post("/sign-in", (await stranger.Get("/sign-in")).TokenIn(), ("UserName", name), ("Password", password));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("NUL", (await Visitor.Page(answer)).Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task In_an_address_too()
    {
        var answer = await house.Stranger().Ask("/sign-in?to=%2Fnext%00");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task A_form_whose_page_takes_many_fields_is_read()
    {
        var tomasz = await house.SignedIn("tomasz");
        var fields = Enumerable.Range(0, 2000).Select(number => ($"field{number}", "x")).ToArray();
        var answer = await tomasz.Post($"/desk/drafts/{Guid.NewGuid()}/form", (await tomasz.Get("/desk")).TokenIn(), fields);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_form_that_no_page_of_ours_sends_is_the_senders_fault()
    {
        var fields = Enumerable.Range(0, 2000).Select(number => ($"field{number}", "x")).ToArray();
        Assert.Equal(HttpStatusCode.BadRequest, (await house.Stranger().Post("/sign-in", null, fields)).StatusCode);
    }

    [Theory]
    [InlineData("/faults/200", null)]
    [InlineData("/faults/999", null)]
    [InlineData("/papers/xyz/questions/1", "amara")]
    public async Task What_is_nowhere_is_not_found(string address, string? who)
    {
        var visitor = who is null ? house.Stranger() : await house.SignedIn(who);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask(address)).StatusCode);
    }
}

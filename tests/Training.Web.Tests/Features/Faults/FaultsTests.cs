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
    [InlineData("/faults/200", null)]
    [InlineData("/faults/999", null)]
    [InlineData("/papers/xyz/questions/1", "amara")]
    public async Task What_is_nowhere_is_not_found(string address, string? who)
    {
        var visitor = who is null ? house.Stranger() : await house.SignedIn(who);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Ask(address)).StatusCode);
    }
}

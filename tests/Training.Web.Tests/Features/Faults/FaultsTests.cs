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
}

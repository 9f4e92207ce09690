using System.Net;
using System.Text;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.OrderItems;

public sealed class OrderItemsTests(TrainingHouse house) : IClassFixture<TrainingHouse>
{
    [Fact]
    public async Task A_question_that_goes_out_comes_in_again_as_a_draft_whose_rules_are_to_be_justified()
    {
        var tomasz = await house.SignedIn("tomasz");
        var item = await (await tomasz.Ask("/order-items/customer-waiting.xml?language=es")).Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        Assert.Contains("qti-order-interaction", Encoding.UTF8.GetString(item), StringComparison.Ordinal);
        var draft = await tomasz.Follow(await Bring(tomasz, item));
        Assert.Contains("It is on the desk", draft.Said(), StringComparison.Ordinal);
        var text = draft.QuerySelector("textarea")!.TextContent;
        // The scenario's own name is taken, so the draft has another.
        Assert.Contains("id: customer-waiting-2", text, StringComparison.Ordinal);
        Assert.Contains("because: to be justified", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_question_of_order_is_refused_with_a_sentence()
    {
        var tomasz = await house.SignedIn("tomasz");
        var page = await tomasz.Follow(await Bring(tomasz, "<!DOCTYPE a [<!ENTITY b \"c\">]><a>&b;</a>"u8.ToArray()));
        Assert.Contains("document type", page.Said(), StringComparison.Ordinal);
        Assert.Contains("Choose the file", (await tomasz.Follow(await tomasz.Post("/order-items", (await tomasz.Get("/packs")).TokenIn()))).Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_scenario_that_asks_for_no_order_has_no_item()
    {
        var tomasz = await house.SignedIn("tomasz");
        Assert.Equal(HttpStatusCode.NotFound, (await tomasz.Ask("/order-items/no-such.xml")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await tomasz.Ask("/order-items/half-out-battery.xml")).StatusCode);
    }

    [Fact]
    public async Task Whoever_is_no_trainer_does_not_learn_the_order()
    {
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.SignedIn("amara")).Ask("/order-items/customer-waiting.xml")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.SignedIn("renske")).Ask("/order-items/customer-waiting.xml")).StatusCode);
    }

    private static async Task<HttpResponseMessage> Bring(Visitor visitor, byte[] bytes)
    {
        var token = (await visitor.Get("/packs")).TokenIn();
        using var form = new MultipartFormDataContent { { new StringContent(token), "form-token" }, { new ByteArrayContent(bytes), "file", "item.xml" } };
        return await visitor.Client.PostAsync("/order-items", form);
    }
}

using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Training.Web.Startup;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.SigningKeys;

public sealed class SigningKeysTests
{
    [Fact]
    public async Task An_administrator_makes_a_new_key_and_gives_one_up_only_with_the_box_ticked()
    {
        await using var house = new TrainingHouse();
        var ifeoma = await house.SignedIn("ifeoma");
        var page = await ifeoma.Get("/signing-key");
        var first = page.QuerySelector("#present ~ .mono")!.TextContent;
        page = await ifeoma.Follow(await ifeoma.Press(page.Button("Make a new key now")));
        var second = page.QuerySelector("#present ~ .mono")!.TextContent;
        Assert.NotEqual(first, second);
        Assert.Contains(first, page.QuerySelector("#old")!.ParentElement!.TextContent, StringComparison.Ordinal);
        page = await ifeoma.Follow(await ifeoma.Press(page.Button("Give the key up and make a new one")));
        Assert.Contains("Nothing was changed.", page.Said(), StringComparison.Ordinal);
        Assert.Equal(second, page.QuerySelector("#present ~ .mono")!.TextContent);
        page = await ifeoma.Follow(await ifeoma.Press(page.Button("Give the key up and make a new one"), ("sure", "yes")));
        Assert.Contains("nothing that it signed is good", page.QuerySelector("#old")!.ParentElement!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, "Nothing can be signed yet: the setting Provider:Address is missing.")]
    [InlineData("https://192.0.2.7", "did:web takes no IP address")]
    [InlineData("http://training.example.org", "write an address that begins with https://")]
    public async Task Outside_development_nothing_is_signed_without_an_address_that_others_can_find(string? address, string sentence)
    {
        await using var house = new TrainingHouse { IsNew = true };
        await using var production = house.WithWebHostBuilder(builder =>
        {
            builder.UseEnvironment("Production");
            if (address is not null) builder.UseSetting("Provider:Address", address);
        });
        var refused = production.Services.GetRequiredService<ProviderPlace>().Address();
        Assert.False(refused.IsOk);
        Assert.Contains(sentence, refused.Fault.Sentence, StringComparison.Ordinal);
        var answer = await production.CreateClient().GetAsync("/.well-known/did.json", TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Equal(System.Net.HttpStatusCode.OK, (await production.CreateClient().GetAsync("/sign-in", TestContext.Current.CancellationToken)).StatusCode);
    }
}

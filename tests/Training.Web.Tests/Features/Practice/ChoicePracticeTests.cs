using AngleSharp.Html.Dom;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Practice;

/// <summary>Practice with options, in a browser without script.</summary>
[Collection(SharedHouse.Name)]
public sealed class ChoicePracticeTests(TrainingHouse house)
{
    public static TheoryData<string> Questions =>
    [
        "/scenarios/bus-after-truck/practice?kind=first-fault",
        "/scenarios/half-isolated-truck/practice?kind=next",
        "/scenarios/night-bus-rush/practice?kind=wait",
        "/scenarios/customer-waiting/practice?kind=what-if",
    ];

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task A_question_with_options_gives_nothing_away(string address)
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(address);
        page.AssertOptionsAreAlike();
        page.HideConsequences();
        var all = page.DocumentElement.OuterHtml;
        var procedure = (await house.Procedure("isolate-chassis")).Procedure;
        Assert.All(Technicians.SecretsOf(procedure), secret => Assert.DoesNotContain(secret, all, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain("decoy", all, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task Nothing_chosen_is_asked_for_again_and_a_choice_is_judged_and_explained(string address)
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw(address);
        page = await visitor.BackTo(await visitor.Press(page.Button("Hand in")));
        Assert.Contains("Choose an option", page.Said(), StringComparison.Ordinal);
        var options = page.QuerySelectorAll("input[name=option]").Length;
        for (var option = 1; option <= options; option++)
        {
            var judged = await visitor.Follow(await visitor.Press((await visitor.Draw(address)).Button("Hand in"), ("option", $"{option}")));
            Assert.NotNull(judged.QuerySelector(".verdict-word"));
            Assert.NotEmpty(judged.QuerySelectorAll(".weighed-right"));
            if (judged.QuerySelector(".verdict-wrong") is null || judged.QuerySelector(".findings") is null) continue;
            Assert.NotEmpty(judged.QuerySelectorAll("[data-finding]"));
            return;
        }

        Assert.Fail("No option of any question was wrong and explained.");
    }

    [Fact]
    public async Task What_was_chosen_stays_where_the_page_comes_back()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await visitor.Draw("/scenarios/night-bus-rush/practice?kind=wait");
        page = await visitor.Follow(await visitor.Press(page.Button("Keep what is here"), ("option", "3")));
        Assert.Equal(["3"], page.QuerySelectorAll("input[name=option]").OfType<IHtmlInputElement>().Where(input => input.IsChecked).Select(input => input.Value));
    }
}

using AngleSharp.Html.Dom;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Web.Tests.House;

namespace Training.Web.Tests.Features.Practice;

/// <summary>What a technician reads of a step that cannot be done in a scenario.</summary>
[Collection(SharedHouse.Name)]
public sealed class AbsentStepTests(TrainingHouse house)
{
    private const string Question = "/scenarios/proving-unit-away/practice";
    private const string Because = "La fuente de prueba está fuera por su revisión anual";

    [Fact]
    public async Task It_is_offered_like_any_step_and_its_reason_is_told_in_the_readers_language_afterwards()
    {
        var (visitor, _) = await house.NewTechnician();
        await visitor.Post("/language", (await visitor.Get("/next")).TokenIn(), ("language", "es"), ("back", "/next"));
        var page = await visitor.Draw(Question);
        Assert.Equal("Probar el comprobador en la fuente de prueba", page.QuerySelector(".offered button[data-step='prove-on-unit']")!.TextContent.Trim());
        Assert.DoesNotContain(Because, page.DocumentElement.OuterHtml, StringComparison.Ordinal);
        page = await HandIn(visitor, page, "Entregar", await Order("prove-on-unit"));
        Assert.Contains(page.QuerySelectorAll("[data-finding]"), finding => finding.TextContent.Contains(Because, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_way_that_is_left_is_right()
    {
        var (visitor, _) = await house.NewTechnician();
        var page = await HandIn(visitor, await visitor.Draw(Question), "Hand in", await Order("prove-on-battery"));
        Assert.Contains("A right order", page.QuerySelector(".verdict-word")!.TextContent, StringComparison.Ordinal);
    }

    /// <summary>An order that is right where nothing is absent, and proves the tester in one way.</summary>
    private async Task<IReadOnlyList<Entry>> Order(string proof) => Grader.For((await house.Procedure("isolate-chassis")).Procedure, new("truck-k26")).Value
        .Grade(new Answer([new Entry(new(proof))])).Value.Nearest;

    private static async Task<IHtmlDocument> HandIn(Visitor visitor, IHtmlDocument page, string button, IReadOnlyList<Entry> entries) =>
        await visitor.Follow(await visitor.Press(page.Button(button), [.. Answers.Fields(entries)]));
}

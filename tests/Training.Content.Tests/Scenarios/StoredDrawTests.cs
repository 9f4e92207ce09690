using System.Globalization;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;

namespace Training.Content.Tests.Scenarios;

/// <summary>
/// What a seed draws is the same on every machine and in every version, or papers that were sat could not be shown and
/// judged again. A hash that changes here is a break with every paper that was ever drawn: mend the draw, not the hash.
/// </summary>
public sealed class StoredDrawTests
{
    private const int Seeds = 200;

    private static readonly ContentLibrary Good = ContentReader.Read(ContentFolders.Good).Library!;

    [Theory]
    [InlineData(QuestionKind.Order, "04bc88420a9bd4e8")]
    [InlineData(QuestionKind.FirstFault, "53069936fa1053b8")]
    [InlineData(QuestionKind.Next, "cec4f63a4f1e8dfe")]
    [InlineData(QuestionKind.Wait, "25070b0f999c7b4c")]
    [InlineData(QuestionKind.WhatIf, "fda422ce10d1a72f")]
    [InlineData(QuestionKind.Reading, "da0fc1ff44aeed3f")]
    public void Two_hundred_seeds_draw_the_questions_and_right_answers_that_they_always_drew(QuestionKind kind, string hash) =>
        Assert.Equal(hash, ContentHash.Of(string.Join('\n', Enumerable.Range(-Seeds / 2, Seeds).Select(seed => Drawn(kind, new(seed * 1_000_003L))))).Hex[..16]);

    private static string Drawn(QuestionKind kind, SeededDraw lots) => kind switch
    {
        QuestionKind.Reading => Reading(lots),
        QuestionKind.Order => Order(lots),
        _ => Choice(kind, lots),
    };

    private static RightOrderDraw Orders(Scenario scenario) => RightOrderDraw.Of(
        Grader.For(Good.FindProcedure(scenario.Procedure!.Value)!.Procedure, scenario.Variant).Value);

    private static string Order(SeededDraw lots)
    {
        var orders = Orders(Good.FindScenario(new("at-the-crane"))!);
        return $"{Short(lots.Shuffle(orders.Draw(lots)))} | {Short(orders.DrawStart(lots))}";
    }

    private static string Choice(QuestionKind kind, SeededDraw lots)
    {
        var scenario = Good.FindScenario(new("at-the-crane"))! with { Show = null };
        var question = scenario.Draw(kind.AsChoice()!.Value, Orders(scenario), lots).Value;
        var options = question.Prompt.Options.Select(option =>
            option.Step?.Value ?? option.Time?.ToString() ?? option.Consequence?.Of.Id ?? string.Create(CultureInfo.InvariantCulture, $"{option.Place}"));
        return $"{Short(question.Prompt.Done)} | {question.Prompt.About} | {Short(question.Prompt.Then)} | {string.Join(", ", options)} | {string.Join(' ', question.Right)}";
    }

    private static string Reading(SeededDraw lots)
    {
        var drawn = Good.FindScenario(new("weak-relay"))!.Reading!.Question.Draw(lots.Next);
        return string.Create(CultureInfo.InvariantCulture,
            $"{string.Join(' ', drawn.Inputs.Select(input => input.Number))} | {drawn.Value:0.######} ± {drawn.Tolerance:0.######} | {string.Join(' ', drawn.Decisions)}");
    }

    private static string Short(IEnumerable<Entry> entries) => string.Join(' ', entries.Select(entry => $"{entry.Step}:{entry.Stated}"));
}

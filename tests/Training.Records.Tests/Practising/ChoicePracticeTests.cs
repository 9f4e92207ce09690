using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Practising;
using Training.Sequencing.Verdicts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Practising;

/// <summary>Practice with options: what is right is told once an answer is in, with the reason and with the order replayed.</summary>
public sealed class ChoicePracticeTests
{
    private static readonly ScenarioId Plain = new("tray-plain");

    public static TheoryData<QuestionKind> Kinds =>
        [QuestionKind.FirstFault, QuestionKind.Next, QuestionKind.Wait, QuestionKind.WhatIf];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task The_same_seed_puts_the_same_question_and_some_option_of_it_is_wrong_and_taught(QuestionKind kind)
    {
        await using var world = await Create();
        for (var seed = 1; seed <= 10; seed++)
        {
            var asked = await Draw(world, kind, seed);
            var again = await Draw(world, kind, seed);
            Assert.Equal(asked.Question.Choice!.Options, again.Question.Choice!.Options);
            Assert.Equal(asked.Question.Start, again.Question.Start);
            var tried = new List<JudgedChoiceView>();
            foreach (var option in asked.Question.Choice.Options) tried.Add(await HandIn(world, asked, option.Id));
            var wrong = tried.Find(judged => judged.Score == 0)!;
            Assert.NotEmpty(wrong.Judgement.Findings);
            Assert.NotEmpty(wrong.Judgement.Right);
            Assert.NotNull(wrong.Replay);
        }
    }

    [Fact]
    public async Task The_replay_of_a_first_fault_is_the_order_that_was_shown_with_its_one_fault()
    {
        await using var world = await Create();
        var asked = await Draw(world, QuestionKind.FirstFault, 3);
        var judged = await HandIn(world, asked, "1");
        Assert.Equal(asked.Question.Choice!.Options.Count, judged.Replay!.Answer.Entries.Count);
        Assert.Single(judged.Replay.Verdict.Findings);
    }

    [Fact]
    public async Task Whoever_waits_long_enough_is_told_why_less_would_not_do()
    {
        await using var world = await Create();
        var asked = await Draw(world, QuestionKind.Wait, 1);
        var judged = await HandIn(world, asked, asked.Question.Choice!.Options.Single(option => option.Text == "60 s").Id);
        Assert.True(judged.Accepted);
        Assert.All(judged.Judgement.Findings, finding => Assert.Equal(FindingKind.TooSoon, finding.Kind));
        Assert.NotEmpty(judged.Judgement.Findings);
        Assert.True(judged.Replay!.Verdict.Accepted);
    }

    [Fact]
    public async Task Nothing_chosen_is_not_handed_in()
    {
        await using var world = await Create();
        var asked = await Draw(world, QuestionKind.Next, 1);
        Refused(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), asked.Ticket, ChosenOptions.Write([])))), "Choose an option.");
    }

    private static async Task<PracticeQuestion> Draw(TestWorld world, QuestionKind kind, long seed) =>
        Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain, kind, seed)));

    private static async Task<JudgedChoiceView> HandIn(TestWorld world, PracticeQuestion asked, params string[] chosen) =>
        (JudgedChoiceView)Ok(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), asked.Ticket, ChosenOptions.Write(chosen))))).Judged;
}

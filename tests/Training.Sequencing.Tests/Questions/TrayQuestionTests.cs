using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Questions;

/// <summary>Questions with options about the relay tray.</summary>
public sealed class TrayQuestionTests
{
    private static readonly RightOrderDraw Tray = RightOrderDraw.Of(Sample.RelayTray.Grader());

    [Fact]
    public void The_least_wait_is_asked_for_with_what_comes_before_and_after_it()
    {
        var question = Draw(ChoiceKind.Wait, 3).Value;
        Assert.Equal("key-off", question.Prompt.Done.Short());
        Assert.Equal("rest", question.Prompt.About!.Value.Value);
        Assert.Equal("lift-tray", question.Prompt.Then.Short());
        Assert.Equal(60, question.Prompt.Options.Single(option => question.Right.Contains(option.Id)).Time!.Value.Seconds);
    }

    [Fact]
    public void Whoever_waits_too_long_is_wrong_and_safe_and_told_why_less_would_not_have_done()
    {
        var question = Draw(ChoiceKind.Wait, 3).Value;
        var judgement = question.Judge([question.Prompt.Options[^1].Id]).Value;
        Assert.Equal((false, true), (judgement.IsRight, judgement.Safe));
        Assert.Equal("rest-first", Assert.Single(judgement.Findings).Subject);
    }

    [Fact]
    public void Work_within_the_gap_counts_towards_it_and_the_time_of_the_rule_is_offered_too()
    {
        // The tag must be hung within the gap and takes 20 s of its 60.
        var procedure = Sample.RelayTray.With("tag", step => step with { IsOptional = false, Takes = Sample.Seconds(20) });
        var question = ChoiceQuestions.Draw(ChoiceKind.Wait, RightOrderDraw.Of(procedure.Grader()), [], new SeededDraw(1)).Value;
        Assert.Equal(40, question.Prompt.Options.Single(option => question.Right.Contains(option.Id)).Time!.Value.Seconds);
        Assert.Contains(question.Prompt.Options, option => option.Time!.Value.Seconds > 40);
    }

    [Fact]
    public void Whoever_does_a_dangerous_step_next_has_answered_unsafely()
    {
        var danger = Sample.RelayTray with { Rules = [.. Sample.RelayTray.Rules.Select(rule => rule with { Stakes = Sample.Burn })] };
        var question = ChoiceQuestions.Draw(ChoiceKind.Next, RightOrderDraw.Of(danger.Grader()), [], new SeededDraw(2)).Value;
        var wrong = question.Prompt.Options.First(option => !question.Right.Contains(option.Id));
        Assert.False(question.Judge([wrong.Id]).Value.Safe);
        Assert.True(question.Judge([.. question.Right]).Value.Safe);
    }

    [Fact]
    public void A_share_of_what_may_be_done_next_is_a_share_of_the_score()
    {
        // Of five steps only the last must wait, and it is not offered alone.
        var procedure = Sample.Plain("abcde").With(Sample.Order("last", ["a", "b", "c", "d"], ["e"]));
        var question = ChoiceQuestions.Draw(ChoiceKind.Next, RightOrderDraw.Of(procedure.Grader()), [], new SeededDraw(8)).Value;
        var wrong = question.Prompt.Options.Single(option => !question.Right.Contains(option.Id));
        var share = Math.Round(100m / question.Right.Count, 2);
        Assert.Equal(share, question.Judge([question.Right[0]]).Value.Score);
        Assert.Equal(0, question.Judge([question.Right[0], wrong.Id]).Value.Score);
    }

    [Fact]
    public void An_answer_that_is_none_is_refused()
    {
        var question = Draw(ChoiceKind.Wait, 3).Value;
        Assert.False(question.Judge([]).IsOk);
        Assert.False(question.Judge(["1", "2"]).IsOk);
        Assert.False(question.Judge(["99"]).IsOk);
        var several = Draw(ChoiceKind.Next, 1).Value;
        Assert.False(several.Judge(["1", "1"]).IsOk);
    }

    [Fact]
    public void A_procedure_without_what_is_asked_about_has_no_such_question()
    {
        var free = RightOrderDraw.Of(Sample.Plain("abc").Grader());
        foreach (var kind in Enum.GetValues<ChoiceKind>()) Assert.False(ChoiceQuestions.Draw(kind, free, [], new SeededDraw(1)).IsOk);
    }

    [Fact]
    public void A_decoy_that_the_procedure_does_not_have_is_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => ChoiceQuestions.Draw(ChoiceKind.Next, Tray, [Sample.Id("lift-tray")], new SeededDraw(1)));

    [Fact]
    public void What_may_be_done_next_is_asked_at_the_start_that_is_given()
    {
        Entry[] start = [new(Sample.Id("key-off"))];
        var question = ChoiceQuestions.Draw(ChoiceKind.Next, Tray, [Sample.Id("hose")], new SeededDraw(1), start).Value;
        Assert.Equal(start, question.Prompt.Done);
        Assert.Contains(question.Prompt.Options, option => option.Step == Sample.Id("rest") && question.Right.Contains(option.Id));
    }

    [Fact]
    public void After_a_start_that_leaves_no_choice_nothing_is_asked()
    {
        Entry[] start = [new(Sample.Id("key-off")), new(Sample.Id("rest")) { Stated = Sample.Seconds(60) }, new(Sample.Id("lift-tray")), new(Sample.Id("hook"))];
        Assert.False(ChoiceQuestions.Draw(ChoiceKind.Next, Tray, [], new SeededDraw(1), start).IsOk);
    }

    [Theory]
    [InlineData(ChoiceKind.FirstFault)]
    [InlineData(ChoiceKind.Next)]
    [InlineData(ChoiceKind.Wait)]
    [InlineData(ChoiceKind.WhatIf)]
    public void An_unanswered_question_is_worth_nothing_and_only_a_fault_can_be_overlooked(ChoiceKind kind)
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var question = Draw(kind, seed).Value;
            var nothing = question.Unanswered;
            Assert.Equal((0m, false), (nothing.Score, nothing.IsRight));
            var fault = kind == ChoiceKind.FirstFault ? Assert.Single(Tray.Grader.Grade(new(question.Prompt.Done)).Value.Findings) : null;
            Assert.Equal(fault?.Stakes.IsSafe ?? true, nothing.Safe);
        }
    }

    [Theory]
    [InlineData(ChoiceKind.FirstFault)]
    [InlineData(ChoiceKind.Next)]
    [InlineData(ChoiceKind.Wait)]
    [InlineData(ChoiceKind.WhatIf)]
    public void Every_wrong_option_has_an_order_to_replay_in_which_something_is_found(ChoiceKind kind)
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var question = Draw(kind, seed).Value;
            foreach (var option in question.Prompt.Options.Where(option => !question.Right.Contains(option.Id)))
            {
                var replayed = question.Judge([option.Id]).Value.Replayed!;
                var verdict = Tray.Grader.Grade(replayed).Value;
                var isTooLong = kind == ChoiceKind.Wait && option.Time >= question.Prompt.Options.Single(other => question.Right.Contains(other.Id)).Time;
                Assert.Equal(isTooLong, verdict.Accepted);
                Assert.All(verdict.Findings, finding => Assert.NotEqual(FindingKind.Missing, finding.Kind));
            }
        }
    }

    [Fact]
    public void The_same_seed_draws_the_same_questions_in_every_version() =>
        Assert.Equal(Stored, string.Join('\n', Enum.GetValues<ChoiceKind>().Select(kind =>
        {
            var question = Draw(kind, 11).Value;
            var options = question.Prompt.Options.Select(option =>
                option.Step?.Value ?? option.Time?.ToString() ?? option.Consequence?.Of.Id ?? $"{option.Place}");
            return $"{question.Prompt.Done.Short()} | {string.Join(", ", options)} | {string.Join(' ', question.Right)}";
        })));

    private const string Stored =
        """
        bench key-off rest:60 lift-tray | 1, 2, 3, 4 | 1
        key-off rest:60 | bench, hook, lift-tray, hose, tag | 3 5
        key-off | 20 s, 60 s, 120 s, 180 s | 2
         | tag-after, park-after, tag-before, dead-tray | 2
        """;

    private static Outcome<ChoiceQuestion, Refusal> Draw(ChoiceKind kind, long seed)
    {
        var told = Sample.RelayTray with { Rules = [.. Sample.RelayTray.Rules.Select(rule => rule with { Otherwise = $"Of {rule.Id}" })] };
        return ChoiceQuestions.Draw(kind, RightOrderDraw.Of(told.Grader()), [Sample.Id("hose")], new SeededDraw(seed));
    }
}

using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Questions;

/// <summary>The laws of questions with options, on random procedures.</summary>
public sealed class ChoiceQuestionTests
{
    private static readonly ChoiceKind[] Kinds = Enum.GetValues<ChoiceKind>();

    [Fact]
    public void A_question_has_options_with_ids_of_their_own_and_some_are_right_and_some_are_not() => ForEach(Kinds, (question, _) =>
    {
        var options = question.Prompt.Options;
        Assert.Equal(Enumerable.Range(1, options.Count).Select(ChoiceIds), options.Select(option => option.Id));
        Assert.NotEmpty(question.Right);
        Assert.True(question.Right.Count < options.Count || options.Count == 1);
        Assert.All(options, option => Assert.Single(
            new object?[] { option.Place, option.Step, option.Time, option.Consequence }, part => part is not null));
    });

    [Fact]
    public void To_choose_just_what_is_right_is_right_and_safe() => ForEach(Kinds, (question, _) =>
    {
        string[][] answers = question.Prompt.TakesSeveral ? [[.. question.Right]] : [.. question.Right.Select(id => new[] { id })];
        foreach (var answer in answers)
        {
            var judgement = question.Judge(answer).Value;
            Assert.Equal((true, true, 100m), (judgement.IsRight, judgement.Safe, judgement.Score));
        }
    });

    [Fact]
    public void To_choose_anything_else_is_wrong_and_taught() => ForEach(Kinds, (question, _) =>
    {
        foreach (var option in question.Prompt.Options.Where(option => !question.Right.Contains(option.Id)))
        {
            var judgement = question.Judge([option.Id]).Value;
            Assert.Equal((false, 0m), (judgement.IsRight, judgement.Score));
            Assert.NotEmpty(judgement.Findings);
            Assert.Equal(question.Right, judgement.Right);
        }
    });

    [Fact]
    public void The_first_fault_is_where_grading_finds_its_first_finding_and_there_is_no_other() => ForEach([ChoiceKind.FirstFault], (question, grader) =>
    {
        var verdict = grader.Grade(new(question.Prompt.Done)).Value;
        var finding = Assert.Single(verdict.Findings);
        var first = verdict.Replay.First(entry => entry.Findings.Count > 0).Place;
        var right = question.Prompt.Options.Where(option => question.Right.Contains(option.Id)).Select(option => option.Place!.Value).ToArray();
        Assert.Contains(first, right);
        Assert.All(right.Where(place => place != first), place =>
        {
            Assert.Equal(FindingKind.TooSoon, finding.Kind);
            Assert.InRange(place, finding.Places[0] + 1, finding.Places[1] - 1);
        });
    });

    [Fact]
    public void What_may_be_done_now_is_what_some_right_order_does_next() => ForEach([ChoiceKind.Next], (question, grader) =>
    {
        var procedure = grader.Procedure;
        foreach (var option in question.Prompt.Options)
        {
            StepId[] done = [.. question.Prompt.Done.Select(entry => entry.Step), option.Step!.Value];
            var isStep = procedure.Steps.Any(step => step.Id == option.Step);
            var canFollow = isStep && Members(procedure).Any(members => CanBegin(RightOrders.For(procedure, grader.Variant, [.. done, .. members]), done));
            if (canFollow && !question.Right.Contains(option.Id))
            {
                // Then it is only a time that is not over yet.
                Assert.All(question.Judge([option.Id]).Value.Findings, finding => Assert.Equal(FindingKind.TooSoon, finding.Kind));
                continue;
            }

            Assert.Equal(canFollow, question.Right.Contains(option.Id));
        }
    });

    [Fact]
    public void The_right_time_is_the_first_that_will_do() => ForEach([ChoiceKind.Wait], (question, grader) =>
    {
        var prompt = question.Prompt;
        var times = prompt.Options.Select(option => option.Time!.Value).ToArray();
        Assert.Equal(times.Order(), times);
        var right = prompt.Options.Single(option => question.Right.Contains(option.Id)).Time!.Value;
        Assert.Contains(times, time => time < right);
        Assert.Contains(times, time => time > right);
        Assert.All(times, time => Assert.Equal(time >= right, IsLongEnough(grader, prompt, time.Seconds)));
        Assert.False(IsLongEnough(grader, prompt, right.Seconds - 0.001m));
        var tooLong = question.Judge([prompt.Options[^1].Id]).Value;
        Assert.True(tooLong.Safe);
    });

    [Fact]
    public void Just_one_of_the_consequences_is_of_a_rule_that_is_broken() => ForEach([ChoiceKind.WhatIf], (question, grader) =>
    {
        var prompt = question.Prompt;
        var about = prompt.About!.Value;
        var broken = Broken(grader, [.. prompt.Done, new Entry(about)]);
        var shown = prompt.Options.Select(option => option.Consequence!).ToArray();
        var right = prompt.Options.Single(option => question.Right.Contains(option.Id)).Consequence!;
        Assert.Contains(right.Of.Id, broken);
        Assert.All(shown.Where(told => told != right), told => Assert.DoesNotContain(told.Of.Id, broken));
        Assert.Equal(shown.Length, shown.Select(told => told.Text.ToUpperInvariant()).Distinct().Count());
    });

    [Fact]
    public void The_same_seed_draws_the_same_question() => ForEach(Kinds, (question, grader, seed) =>
    {
        var again = Draw(question.Prompt.Kind, grader, seed).Value;
        Assert.Equal(question.Prompt.Options, again.Prompt.Options);
        Assert.Equal(question.Prompt.Done, again.Prompt.Done);
        Assert.Equal(question.Right, again.Right);
    });

    /// <summary>One member of each one-of group, in every combination.</summary>
    private static StepId[][] Members(Procedure procedure) => procedure.Steps.Where(step => step.Choice is not null)
        .GroupBy(step => step.Choice)
        .Aggregate(new StepId[][] { [] }, (all, group) => [.. all.SelectMany(one => group.Select(step => (StepId[])[.. one, step.Id]))]);

    private static bool CanBegin(RightOrders orders, StepId[] done) => orders.All().Any(order =>
        order.Take(done.Length).Select(step => orders.Steps[step].Id).SequenceEqual(done));

    private static string ChoiceIds(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static bool IsLongEnough(Grader grader, ChoicePrompt prompt, decimal seconds)
    {
        Entry[] entries = [.. prompt.Done, new(prompt.About!.Value) { Stated = Sample.Seconds(seconds) }, .. prompt.Then];
        return grader.Grade(new(entries)).Value.Findings.All(finding => finding.Kind is FindingKind.Missing);
    }

    /// <summary>The rules and decoys that are broken once these entries are done and everything else follows as it should.</summary>
    private static HashSet<string> Broken(Grader grader, Entry[] entries)
    {
        // A pair whose earlier step is not done yet is broken by whatever comes later: the rest is appended.
        var all = grader.Layout.Steps.Select(step => step.Id).Where(id => entries.All(entry => entry.Step != id));
        var verdict = grader.Grade(new([.. entries, .. all.Select(id => new Entry(id))])).Value;
        return [.. verdict.Replay[entries.Length - 1].Findings.Select(finding => verdict.Findings[finding].Subject)];
    }

    private static void ForEach(ChoiceKind[] kinds, Action<ChoiceQuestion, Grader> law) =>
        ForEach(kinds, (question, grader, _) => law(question, grader));

    private static void ForEach(ChoiceKind[] kinds, Action<ChoiceQuestion, Grader, long> law)
    {
        foreach (var kind in kinds)
        {
            var drawn = 0;
            for (var seed = 1; seed <= 120; seed++)
            {
                var grader = Told(RandomProcedure.Of(3 + (seed % 6), (ulong)seed * 104729));
                var question = Draw(kind, grader, seed);
                if (!question.IsOk) continue;
                drawn++;
                law(question.Value, grader, seed);
            }

            Assert.True(drawn > 10, $"Only {drawn} questions of the kind {kind} were drawn.");
        }
    }

    private static Outcome<ChoiceQuestion, Refusal> Draw(ChoiceKind kind, Grader grader, long seed) => ChoiceQuestions.Draw(
        kind, RightOrderDraw.Of(grader), [.. grader.Procedure.Decoys.Select(decoy => decoy.Id)], new SeededDraw(seed));

    /// <summary>The procedure with a consequence on every rule and decoy.</summary>
    private static Grader Told((Procedure Procedure, Grader Grader) one) => Grader.For(
        one.Procedure with
        {
            Rules = [.. one.Procedure.Rules.Select(rule => rule with { Otherwise = $"This comes of {rule.Id}" })],
            Decoys = [.. one.Procedure.Decoys.Select(decoy => decoy with { Otherwise = $"This comes of {decoy.Id}" })],
        },
        one.Grader.Variant).Value;
}

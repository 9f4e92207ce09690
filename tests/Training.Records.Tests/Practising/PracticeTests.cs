using Microsoft.EntityFrameworkCore;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Practising;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Practising;

public sealed class PracticeTests
{
    private static readonly ScenarioId Plain = new("tray-plain");
    private static readonly ScenarioId Half = new("tray-half");

    [Fact]
    public async Task The_same_seed_offers_the_same_order()
    {
        await using var world = await Create();
        var first = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain, seed: 7)));
        var second = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain, seed: 7)));
        Assert.Equal(first.Question.Offered, second.Question.Offered);
    }

    [Fact]
    public async Task Steps_of_another_kind_of_vehicle_are_not_offered_and_decoys_are()
    {
        await using var world = await Create();
        var tipper = Ok(await world.Practice(practice => practice.Draw(world.Technician, new("tray-hurry"))));
        Assert.Equal(
            ["bench", "hook", "hose", "key-off", "lift-tray", "pry", "rest"],
            tipper.Question.Offered.Select(step => step.Id.Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_half_done_job_offers_what_is_left_and_the_scenarios_own_decoys()
    {
        await using var world = await Create();
        var half = Ok(await world.Practice(practice => practice.Draw(world.Technician, Half, QuestionKind.Finish)));
        Assert.Equal(["key-off", "rest"], half.Question.Start.Select(step => step.Id.Value));
        Assert.Equal(150, half.Question.Start[1].Stated!.Value.Seconds);
        Assert.Equal(
            ["bench", "hook", "hose", "lift-tray", "stow-boom"],
            half.Question.Offered.Select(step => step.Id.Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task A_try_is_graded_at_once_with_the_reason()
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        var result = Ok(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), asked.Ticket, Ways.UnsafeOrder))));
        Assert.False(result.Judged.Accepted);
        Assert.False(result.Judged.Safe);
        Assert.NotEmpty(((JudgedOrderView)result.Judged).Order.Verdict.Findings);
        var line = Assert.Single(Ok(await world.Practice(practice => practice.Of(world.Technician, world.Technician.Person))));
        Assert.Equal(result.Judged.Score, line.Score);
    }

    [Fact]
    public async Task A_try_that_is_handed_in_twice_counts_once()
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        var handIn = new PracticeHandIn(Guid.NewGuid(), asked.Ticket, Ways.RightOrder);
        var all = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() =>
            world.Practice(practice => practice.HandIn(world.Technician, handIn)))));
        Assert.Single(all.Select(outcome => Ok(outcome).Id).Distinct());
        Assert.Equal(1, await world.Db(db => db.PracticeTries.CountAsync()));
    }

    [Fact]
    public async Task The_same_key_of_two_people_is_two_tries()
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        var handIn = new PracticeHandIn(Guid.NewGuid(), asked.Ticket, Ways.RightOrder);
        var one = Ok(await world.Practice(practice => practice.HandIn(world.Technician, handIn)));
        var other = Ok(await world.Practice(practice => practice.HandIn(world.Colleague, handIn)));
        Assert.NotEqual(one.Id, other.Id);
    }

    [Fact]
    public async Task A_question_drawn_before_a_change_is_graded_as_it_was_put()
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        await world.Republish("procedures/change-tray.yaml", "at-least: 60 s", "at-least: 120 s");
        var result = Ok(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), asked.Ticket, Ways.RightOrder))));
        Assert.True(result.Judged.Accepted);
        var again = Ok(await world.Practice(practice => practice.Look(world.Technician, result.Id)));
        Assert.True(again.Judged.Accepted);
    }

    [Theory]
    [InlineData("nonsense", "The answer is no JSON that can be read (line 1).")]
    [InlineData("""[{"step":"no-such-step"}]""", "“no-such-step” is not among what this question offers.")]
    [InlineData("""{"start":["key-off"],"entries":[{"step":"rest"}]}""", "An answer is a list of what is done, without a start and without real times.")]
    [InlineData("""[{"step":"key-off","startedAt":0,"finishedAt":1}]""", "An answer is a list of what is done, without a start and without real times.")]
    public async Task An_answer_that_cannot_be_graded_is_refused_and_not_kept(string answer, string sentence)
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        Refused(
            await world.Practice(practice => practice.HandIn(world.Technician, new(Guid.NewGuid(), asked.Ticket, answer))), sentence);
        Assert.Equal(0, await world.Db(db => db.PracticeTries.CountAsync()));
    }

    [Fact]
    public async Task An_endless_answer_is_refused()
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        await Try(new string(' ', 70_000), "The answer is too long to be read.");
        await Try("[" + string.Join(',', Enumerable.Repeat("""{"step":"rest"}""", 501)) + "]", "An answer has at most 500 entries.");

        async Task Try(string answer, string sentence) => Refused(
            await world.Practice(practice => practice.HandIn(world.Technician, new(Guid.NewGuid(), asked.Ticket, answer))), sentence);
    }

    [Fact]
    public async Task A_question_that_does_not_exist_is_refused()
    {
        await using var world = await Create();
        NotFound(await world.Practice(practice => practice.Draw(world.Technician, new("no-such-scenario"))));
        Refused(
            await world.Practice(practice => practice.Draw(world.Technician, Plain, QuestionKind.Finish)),
            "That scenario is not asked in that way.");
        NotFound(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), new(Plain, QuestionKind.Order, 99, 1), "[]"))));
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        Refused(
            await world.Practice(practice => practice.HandIn(world.Technician, new(Guid.Empty, asked.Ticket, "[]"))),
            "A try needs a key of its own; load the page again.");
    }

    [Fact]
    public async Task An_owner_sees_a_technicians_tries_and_a_colleague_does_not()
    {
        await using var world = await Create();
        var asked = Ok(await world.Practice(practice => practice.Draw(world.Technician, Plain)));
        var result = Ok(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), asked.Ticket, Ways.RightOrder))));
        Ok(await world.Practice(practice => practice.Look(world.Owner, result.Id)));
        NotFound(await world.Practice(practice => practice.Look(world.Colleague, result.Id)));
        NotFound(await world.Practice(practice => practice.Of(world.Colleague, world.Technician.Person)));
    }
}

using Microsoft.EntityFrameworkCore;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Publishing;
using Training.Sequencing.Json;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Examining;

public sealed class PapersTests
{
    private const string TimeIsOver = "The time is over; what was saved before is graded.";

    [Fact]
    public async Task A_paper_asks_what_the_blueprint_says()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        Assert.Equal([QuestionKind.Order, QuestionKind.Finish], open.Questions.Select(question => question.Question.Kind));
        Assert.Equal([1, 2], open.Questions.Select(question => question.Number));
        Assert.Contains(open.Questions[0].Question.Scenario.Value, new[] { "tray-plain", "tray-hurry" });
        Assert.Equal(world.Clock.GetUtcNow().AddMinutes(30), open.EndsAt.ToDateTimeOffset());
    }

    [Fact]
    public async Task Two_neighbours_in_a_sitting_share_no_scenario_that_the_pool_can_spare()
    {
        await using var world = await Create();
        for (var sitting = 1; sitting <= 6; sitting++)
        {
            var room = await world.OpenSitting();
            var first = await world.Begin(world.Technician, await world.Admit(room, world.Technician));
            var second = await world.Begin(world.Colleague, await world.Admit(room, world.Colleague));
            Assert.NotEqual(first.Questions[0].Question.Scenario, second.Questions[0].Question.Scenario);
            Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, room)));
            world.Clock.Advance(TimeSpan.FromDays(3));
        }
    }

    [Fact]
    public async Task Beginning_twice_gives_the_same_questions_and_the_same_end()
    {
        await using var world = await Create();
        var paper = await world.Admit(await world.OpenSitting(), world.Technician);
        var both = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => world.Begin(world.Technician, paper))));
        world.Clock.Advance(TimeSpan.FromMinutes(3));
        var later = await world.Begin(world.Technician, paper);
        foreach (var open in both)
        {
            Assert.Equal(later.EndsAt, open.EndsAt);
            Assert.Equal(
                later.Questions.SelectMany(question => question.Question.Offered), open.Questions.SelectMany(question => question.Question.Offered));
        }

        Assert.Equal(27, later.Left.TotalMinutes);
    }

    [Fact]
    public async Task A_paper_can_be_drawn_again_from_its_seed()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        var kept = await world.Db(db => db.Papers.Include(paper => paper.Questions).SingleAsync(paper => paper.Id == open.Id));
        var library = world.One<Library>().Current;
        var draw = world.One<PaperDraw>();
        var again = Ok(await draw.Draw(library, library.Content.FindCompetency(RelayTrays)!.Paper, kept.Seed!.Value, new Dictionary<(QuestionKind, ScenarioId), int>()));
        Assert.Equal(kept.Questions.OrderBy(question => question.Number).Select(question => question.Scenario), again.Select(question => question.Scenario));
        foreach (var question in kept.Questions)
        {
            var shown = (await draw.Again(library, kept, question)).View("en");
            Assert.Equal(open.Questions[question.Number - 1].Question.Offered, shown.Offered);
        }
    }

    [Fact]
    public async Task No_question_of_a_paper_tells_of_another_though_its_scenario_is_the_least_used()
    {
        await using var world = await Create();
        var (library, draw) = (world.One<Library>().Current, world.One<PaperDraw>());
        PaperBlueprint blueprint = new(
            [new(QuestionKind.Order, [new("tray-plain"), new("tray-half")], 1), new(QuestionKind.Next, [new("tray-plain")], 1)], Training.Sequencing.Procedures.Duration.FromSeconds(600), 80, default);
        var used = new Dictionary<(QuestionKind, ScenarioId), int> { [(QuestionKind.Order, new("tray-half"))] = 5 };
        for (var seed = 1; seed <= 20; seed++)
            Assert.Equal(["tray-half", "tray-plain"], (await draw.Scenarios(library, blueprint, seed, used)).Select(asked => asked.Scenario.Value));
    }

    [Fact]
    public async Task What_was_published_before_and_cannot_be_drawn_so_is_drawn_all_the_same()
    {
        await using var world = await Create();
        var library = world.One<Library>().Current;
        PaperBlueprint blueprint = new([.. new[] { QuestionKind.Order, QuestionKind.FirstFault }.Select(kind => new QuestionDraw(kind, [new("tray-plain")], 1))], Training.Sequencing.Procedures.Duration.FromSeconds(600), 80, default);
        Assert.Equal(2, Ok(await world.One<PaperDraw>().Draw(library, blueprint, 1, new Dictionary<(QuestionKind, ScenarioId), int>())).Count);
    }

    [Fact]
    public async Task A_paper_that_was_begun_when_questions_still_told_of_each_other_stays_as_it_was_drawn()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        var hash = world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.File.Hash;
        await world.Db(db => db.Set<PaperQuestion>().Where(question => question.PaperId == open.Id).ExecuteUpdateAsync(set => set
            .SetProperty(question => question.Scenario, new ScenarioId("tray-plain")).SetProperty(question => question.Variant, Crane)
            .SetProperty(question => question.Procedure, ChangeTray).SetProperty(question => question.ProcedureHash, hash)
            .SetProperty(question => question.Kind, question => question.Number == 1 ? QuestionKind.Order : QuestionKind.FirstFault)));
        await world.Restart();
        var again = Ok(await world.Papers(papers => papers.Open(world.Technician, open.Id)));
        Assert.Equal([QuestionKind.Order, QuestionKind.FirstFault], again.Questions.Select(question => question.Question.Kind));
        Assert.All(again.Questions, question => Assert.Equal("tray-plain", question.Question.Scenario.Value));
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, Ways.RightOrder, 1)));
        Assert.Equal(50m, Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id))).Score);
    }

    [Fact]
    public async Task Nothing_that_an_open_paper_shows_says_what_is_right()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        var look = Ok(await world.Papers(papers => papers.Look(world.Technician, open.Id)));
        Assert.Null(look.Answers);
        Assert.Null(look.Paper.Result);
        Assert.All(open.Questions, question =>
        {
            Assert.Null(question.Question.Situation.Show);
            Assert.Empty(question.Question.Situation.Start);
        });
        Assert.Null(Ok(await world.Papers(papers => papers.Look(world.Examiner, open.Id))).Answers);
    }

    [Fact]
    public async Task A_saved_answer_is_there_again()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        const string Answer = """[{"step":"rest","seconds":30}]""";
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, Answer, 1)));
        await world.Restart();
        var again = Ok(await world.Papers(papers => papers.Open(world.Technician, open.Id)));
        Assert.Equal((Answer, 1), (again.Questions[0].Saved!.AnswerJson, again.Questions[0].Saved!.Counter));
        Assert.Null(again.Questions[1].Saved);
    }

    [Fact]
    public async Task A_late_older_save_never_overwrites_a_newer_one()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, """[{"step":"rest","seconds":2}]""", 2)));
        var held = Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, """[{"step":"rest","seconds":1}]""", 1)));
        Assert.Equal(("""[{"step":"rest","seconds":2}]""", 2), (held.AnswerJson, held.Counter));
    }

    [Fact]
    public async Task Of_saves_that_race_the_newest_stays()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        await Task.WhenAll(Enumerable.Range(1, 8).Select(counter => Task.Run(() => world.Papers(papers => papers.Save(
            world.Technician, open.Id, 1, $$"""[{"step":"rest","seconds":{{counter}}}]""", counter)))));
        var held = Ok(await world.Papers(papers => papers.Open(world.Technician, open.Id))).Questions[0].Saved!;
        Assert.Equal(("""[{"step":"rest","seconds":8}]""", 8), (held.AnswerJson, held.Counter));
    }

    [Theory]
    [InlineData(3, "[]", 1, "The paper has no question 3.")]
    [InlineData(1, "[]", 0, "Saves are counted from 1; load the page again.")]
    [InlineData(1, "[", 1, "The answer is no JSON that can be read (line 1).")]
    [InlineData(2, """[{"step":"pry"}]""", 1, "“pry” is not among what this question offers.")]
    [InlineData(2, """[{"step":"key-off"}]""", 1, "“key-off” is not among what this question offers.")]
    public async Task A_wrong_save_is_refused_with_the_reason(int number, string answer, long counter, string sentence)
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        Refused(await world.Papers(papers => papers.Save(world.Technician, open.Id, number, answer, counter)), sentence);
        Assert.All(Ok(await world.Papers(papers => papers.Open(world.Technician, open.Id))).Questions, question => Assert.Null(question.Saved));
    }

    [Fact]
    public async Task A_save_that_could_not_be_graded_is_refused_at_once()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        var refused = await world.Papers(papers => papers.Save(world.Technician, open.Id, 2, """[{"step":"hook","seconds":5}]""", 1));
        Assert.False(refused.IsOk);
        Assert.Contains("hook", refused.Fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_paper_that_is_not_begun_is_neither_opened_nor_saved_nor_handed_in()
    {
        await using var world = await Create();
        var paper = await world.Admit(await world.OpenSitting(), world.Technician);
        const string Sentence = "The paper is not begun yet.";
        Refused(await world.Papers(papers => papers.Open(world.Technician, paper)), Sentence);
        Refused(await world.Papers(papers => papers.Save(world.Technician, paper, 1, "[]", 1)), Sentence);
        Refused(await world.Papers(papers => papers.HandIn(world.Technician, paper)), Sentence);
    }

    [Fact]
    public async Task A_paper_is_its_own_persons_alone()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        foreach (var actor in new[] { world.Colleague, world.Owner, world.Examiner, world.Administrator, world.ForeignExaminer })
        {
            NotFound(await world.Papers(papers => papers.Begin(actor, open.Id)));
            NotFound(await world.Papers(papers => papers.Open(actor, open.Id)));
            NotFound(await world.Papers(papers => papers.Save(actor, open.Id, 1, "[]", 1)));
            NotFound(await world.Papers(papers => papers.HandIn(actor, open.Id)));
        }

        NotFound(await world.Papers(papers => papers.Look(world.Colleague, open.Id)));
        Ok(await world.Papers(papers => papers.Look(world.Owner, open.Id)));
    }

    [Fact]
    public async Task A_paper_that_is_handed_in_twice_at_once_has_one_result()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        var results = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() =>
            world.Papers(papers => papers.HandIn(world.Technician, open.Id)))));
        Assert.Single(results.Select(Ok).Distinct());
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(Ok(results[0]), Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id))));
        Refused(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, "[]", 1)), "The paper is handed in.");
        Refused(await world.Papers(papers => papers.Open(world.Technician, open.Id)), "The paper is handed in.");
    }

    [Fact]
    public async Task The_score_is_the_mean_and_a_paper_with_an_unsafe_answer_is_not_passed()
    {
        await using var world = await Create();
        await world.Republish("competencies/relay-trays.yaml", "pass-mark: 80", "pass-mark: 50");
        var open = await world.BegunPaper(world.Technician);
        var isCrane = open.Questions[0].Question.Variant == Crane;
        var wrong = isCrane ? Ways.UnsafeOrder : Ways.UnsafeOrder.Replace(""",{"step":"stow-boom"}""", "", StringComparison.Ordinal);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, wrong, 1)));
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 2, Ways.RightAnswer(open.Questions[1].Question), 1)));
        var result = Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        // Of 5 steps (crane) or 4 (tipper) one stands wrong and one comes too soon: 60 or 50, and 100 for the other answer.
        Assert.Equal(isCrane ? 80m : 75m, result.Score);
        Assert.False(result.Safe);
        Assert.False(result.Passed);
    }

    [Fact]
    public async Task What_was_saved_in_time_is_graded_when_the_time_is_over()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        foreach (var question in open.Questions)
            Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, question.Number, Ways.RightAnswer(question.Question), 1)));
        world.Clock.Advance(TimeSpan.FromMinutes(29));
        Assert.Equal(0, await world.Papers(papers => papers.CloseOverdue()));
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(1, await world.Papers(papers => papers.CloseOverdue()));
        Assert.Equal(0, await world.Papers(papers => papers.CloseOverdue()));
        var result = Ok(await world.Papers(papers => papers.Look(world.Technician, open.Id))).Paper.Result!;
        Assert.Equal((100m, true, PaperEnd.ByTime, open.EndsAt), (result.Score, result.Passed, result.End, result.HandedInAt));
    }

    [Fact]
    public async Task Nothing_that_is_saved_after_the_end_counts()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        world.Clock.Advance(TimeSpan.FromMinutes(30));
        Refused(await world.Papers(papers => papers.Save(
            world.Technician, open.Id, 1, Ways.RightAnswer(open.Questions[0].Question), 1)), TimeIsOver);
        Refused(await world.Papers(papers => papers.Open(world.Technician, open.Id)), TimeIsOver);
        Assert.Equal(0, Ok(await world.Papers(papers => papers.Look(world.Technician, open.Id))).Paper.Result!.Score);
    }

    [Fact]
    public async Task A_late_hand_in_gets_the_result_of_what_was_saved_in_time()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 2, Ways.RightAnswer(open.Questions[1].Question), 1)));
        world.Clock.Advance(TimeSpan.FromHours(2));
        var result = Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        Assert.Equal((50m, PaperEnd.ByTime, open.EndsAt), (result.Score, result.End, result.HandedInAt));
    }

    [Fact]
    public async Task Whoever_looks_after_the_end_closes_the_paper()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var paper = await world.Admit(sitting, world.Technician);
        await world.Begin(world.Technician, paper);
        world.Clock.Advance(TimeSpan.FromHours(2));
        Assert.Equal(PaperState.HandedIn, Assert.Single(Ok(await world.Sittings(sittings => sittings.Look(world.Examiner, sitting))).Papers).State);
        Assert.Equal(PaperState.HandedIn, Assert.Single(await world.Papers(papers => papers.Mine(world.Technician))).State);
    }

    [Fact]
    public async Task Closing_the_sitting_closes_an_open_paper_with_what_was_saved()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var open = await world.Begin(world.Technician, await world.Admit(sitting, world.Technician));
        foreach (var question in open.Questions)
            Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, question.Number, Ways.RightAnswer(question.Question), 1)));
        var closed = Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, sitting)));
        Assert.Equal((true, PaperEnd.BySitting), (closed.Papers[0].Result!.Passed, closed.Papers[0].Result!.End));
        Refused(
            await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, "[]", 2)),
            "The sitting is closed; what was saved before is graded.");
    }

    [Fact]
    public async Task The_technician_sees_the_result_at_once_and_the_findings_once_the_sitting_is_closed()
    {
        await using var world = await Create();
        var sitting = await world.OpenSitting();
        var open = await world.Begin(world.Technician, await world.Admit(sitting, world.Technician));
        Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        var early = Ok(await world.Papers(papers => papers.Look(world.Technician, open.Id)));
        Assert.NotNull(early.Paper.Result);
        Assert.Null(early.Answers);
        Assert.NotNull(Ok(await world.Papers(papers => papers.Look(world.Examiner, open.Id))).Answers);
        Ok(await world.Sittings(sittings => sittings.Close(world.Examiner, sitting)));
        var late = Ok(await world.Papers(papers => papers.Look(world.Technician, open.Id)));
        Assert.Equal(2, late.Answers!.Count);
        Assert.NotEmpty(((JudgedOrderView)late.Answers[0]).Order.Verdict.Findings);
        Assert.Null(Ok(await world.Papers(papers => papers.Look(world.Owner, open.Id))).Answers);
    }

    [Fact]
    public async Task An_answer_graded_again_by_the_hash_that_was_kept_gives_the_verdict_that_was_kept()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, """[{"step":"lift-tray"},{"step":"hose"}]""", 1)));
        Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        await world.Republish("procedures/change-tray.yaml", "severity: critical", "severity: minor");
        await world.Restart();
        var questions = await world.Db(db => db.Set<PaperQuestion>().Where(question => question.PaperId == open.Id).ToListAsync());
        foreach (var kept in questions)
        {
            var start = world.One<Library>().Current.Content.FindScenario(kept.Scenario)!.Start.Where(_ => kept.Kind == QuestionKind.Finish).ToList();
            var answer = AnswerJson.Parse(kept.AnswerJson ?? "[]").Value with { Start = start };
            var verdict = (await world.One<Graders>().For(kept.ProcedureHash!.Value, kept.Variant)).Grade(answer).Value;
            Assert.Equal(kept.VerdictJson, VerdictJson.Write(verdict));
        }

        Assert.Equal(2, questions.Count);
    }

    [Fact]
    public async Task Of_a_hand_in_and_the_end_of_the_time_that_race_one_wins_and_both_tell_the_same()
    {
        await using var world = await Create();
        var open = await world.BegunPaper(world.Technician);
        world.Clock.Advance(TimeSpan.FromMinutes(30));
        var handIn = Task.Run(() => world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        var sweep = Task.Run(() => world.Papers(papers => papers.CloseOverdue()));
        var look = Task.Run(() => world.Papers(papers => papers.Look(world.Examiner, open.Id)));
        Assert.Equal(Ok(await handIn), Ok(await look).Paper.Result);
        Assert.InRange(await sweep, 0, 1);
        Assert.Equal(PaperEnd.ByTime, Ok(await handIn).End);
    }
}

using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Examining;

/// <summary>Papers that ask by options: they are drawn, saved, judged and kept silent about as orders are.</summary>
public sealed class ChoicePaperTests
{
    private static readonly QuestionKind[] Kinds = [QuestionKind.FirstFault, QuestionKind.Next, QuestionKind.Wait, QuestionKind.WhatIf];

    [Fact]
    public async Task A_paper_asks_every_kind_that_its_blueprint_names()
    {
        await using var world = await World();
        var open = await Begun(world);
        Assert.Equal(Kinds, open.Questions.Select(question => question.Question.Kind));
        Assert.All(open.Questions, question =>
        {
            Assert.Empty(question.Question.Offered);
            Assert.InRange(question.Question.Choice!.Options.Count, 2, 8);
        });
    }

    [Fact]
    public async Task Right_options_pass_and_the_judged_answers_say_which_they_were()
    {
        await using var world = await World();
        var open = await Begun(world);
        foreach (var (number, right) in await Right(world, open.Id))
            Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, number, right, 1)));
        var result = Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        Assert.Equal((100m, true, true), (result.Score, result.Safe, result.Passed));
        Assert.Equal(result, Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id))));
        var look = Ok(await world.Papers(papers => papers.Look(world.Examiner, open.Id)));
        Assert.All(look.Answers!, answer =>
        {
            var choice = Assert.IsType<JudgedChoiceView>(answer);
            Assert.True(choice.Accepted);
            Assert.Subset(choice.Judgement.Right.ToHashSet(), choice.Chosen.ToHashSet());
        });
    }

    [Fact]
    public async Task What_is_unanswered_is_worth_nothing_and_a_fault_that_nobody_named_is_overlooked()
    {
        await using var world = await World();
        var open = await Begun(world);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 2, """{"chosen":[]}""", 1)));
        var result = Ok(await world.Papers(papers => papers.HandIn(world.Technician, open.Id)));
        Assert.Equal((0m, false), (result.Score, result.Passed));
        var answers = Ok(await world.Papers(papers => papers.Look(world.Examiner, open.Id))).Answers!;
        var fault = (JudgedChoiceView)answers[0];
        Assert.Equal(fault.Judgement.Findings.All(finding => finding.Stakes.IsSafe), fault.Safe);
        Assert.All(answers.Skip(1), answer => Assert.True(answer.Safe));
    }

    [Fact]
    public async Task A_draft_is_there_again_after_a_crash_and_an_older_one_never_overwrites_it()
    {
        await using var world = await World();
        var open = await Begun(world);
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, """{"chosen":["2"]}""", 5)));
        Ok(await world.Papers(papers => papers.Save(world.Technician, open.Id, 1, """{"chosen":["1"]}""", 4)));
        await world.Restart();
        var again = Ok(await world.Papers(papers => papers.Open(world.Technician, open.Id)));
        Assert.Equal(("""{"chosen":["2"]}""", 5, 1), (again.Questions[0].Saved!.AnswerJson, again.Questions[0].Saved!.Counter, again.Questions[0].Saved!.Parts));
        Assert.Equal(open.Questions.Select(Shown), again.Questions.Select(Shown));
    }

    [Theory]
    [InlineData(1, """{"chosen":["1","2"]}""", "Choose just one option.")]
    [InlineData(2, """{"chosen":["1","1"]}""", "An option is chosen twice.")]
    [InlineData(3, """{"chosen":["99"]}""", "This question has no option “99”.")]
    [InlineData(3, """[{"step":"rest","seconds":60}]""", "The answer to this question is what is chosen of its options.")]
    [InlineData(3, """{"chosen":[1]}""", "The answer to this question is what is chosen of its options.")]
    [InlineData(3, """{"chosen":["1"],"right":true}""", "The answer to this question is what is chosen of its options.")]
    [InlineData(3, "{", "The answer to this question is what is chosen of its options.")]
    public async Task What_is_no_choice_of_this_question_is_refused_and_changes_nothing(int number, string answer, string sentence)
    {
        await using var world = await World();
        var open = await Begun(world);
        Refused(await world.Papers(papers => papers.Save(world.Technician, open.Id, number, answer, 1)), sentence);
        Assert.All(Ok(await world.Papers(papers => papers.Open(world.Technician, open.Id))).Questions, question => Assert.Null(question.Saved));
    }

    [Fact]
    public async Task Nothing_that_is_kept_of_a_question_says_what_is_right()
    {
        await using var world = await World();
        var open = await Begun(world);
        await world.Papers(papers => papers.HandIn(world.Technician, open.Id));
        var kept = await world.Db(db => db.Papers.Include(paper => paper.Questions).SingleAsync(paper => paper.Id == open.Id));
        Assert.All(kept.Questions, question => Assert.Equal(["accepted", "safe", "score", "findings"], JsonDocument.Parse(question.VerdictJson!).RootElement.EnumerateObject().Select(part => part.Name)));
    }

    private static string Shown(OpenQuestion question) => string.Join('|', question.Question.Choice!.Options.Select(option => option.Text));

    private static async Task<TestWorld> World()
    {
        var world = await Create();
        // Each kind on a procedure of its own: no question of a paper may show what another asks.
        string[] kinds = ["first-fault", "next", "wait", "what-if"];
        var state = await world.One<Publisher>().Publish(
        [
            .. FilesWith(
                "competencies/relay-trays.yaml",
                "    - { kind: order, from: [tray-plain, tray-hurry], count: 1 }\n    - { kind: finish, from: [tray-half], count: 1 }",
                string.Join('\n', kinds.Select(kind => $"    - {{ kind: {kind}, from: [tray-{kind}], count: 1 }}")))
                .Select(file => file.Path == "modules/01-trays/lesson.md"
                    ? file with { Text = file.Text.Replace("stow-tray,", $"stow-tray, {string.Join(", ", kinds.Select(kind => $"change-{kind}"))},", StringComparison.Ordinal) }
                    : file),
            .. kinds.Select(kind => Copy("procedures/change-tray.yaml", $"procedures/change-{kind}.yaml", $"change-{kind}")),
            .. kinds.Select(kind => Copy("scenarios/tray-plain.md", $"scenarios/tray-{kind}.md", $"change-{kind}")),
        ]);
        Assert.False(state.IsHeldBack, string.Join('\n', state.Problems));
        return world;

        static ContentFile Copy(string path, string to, string procedure) =>
            new(to, Files.Single(file => file.Path == path).Text.Replace("change-tray", procedure, StringComparison.Ordinal));
    }

    private static async Task<OpenPaper> Begun(TestWorld world) => await world.BegunPaper(world.Technician);

    private static async Task<IReadOnlyList<(int Number, string Answer)>> Right(TestWorld world, PaperId id)
    {
        var paper = await world.Db(db => db.Papers.Include(known => known.Questions).SingleAsync(known => known.Id == id));
        var right = new List<(int, string)>();
        foreach (var kept in paper.Questions)
            right.Add((kept.Number, (await world.One<PaperDraw>().Again(world.One<Library>().Current, paper, kept)).RightAnswer()));
        return right;
    }
}

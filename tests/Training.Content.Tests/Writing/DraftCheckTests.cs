using Training.Content.Tests.Shipped;
using Training.Content.Writing;
using Training.Sequencing.Answers;

namespace Training.Content.Tests.Writing;

public sealed class DraftCheckTests
{
    private static readonly IReadOnlyList<ContentFile> Files = ShippedContent.Files;

    // Reading everything takes a second; of each sort of file a few stand for all.
    public static TheoryData<string> SomeOfEach => [.. Files
        .Where(file => ContentFile.IsContent(file.Path) && !file.Path.EndsWith(".svg", StringComparison.Ordinal))
        .GroupBy(file => (file.Path.Split('/')[0], file.Name.Count(letter => letter == '.')))
        .SelectMany(sort => sort.Where((_, at) => at % 17 == 3 || sort.Count() < 4)).Select(file => file.Path)];

    [Theory]
    [MemberData(nameof(SomeOfEach))]
    public void The_files_around_a_draft_are_enough_to_find_its_problems(string path)
    {
        var draft = Files.Single(file => file.Path == path);
        // As an author leaves it: a name that leads nowhere.
        var broken = draft with { Text = draft.Text.Replace("isolate-chassis", "isolate-chasis", StringComparison.Ordinal) };
        foreach (var text in new[] { draft, broken })
            Assert.Equal(DraftCheck.Of(Files, text).Problems, DraftCheck.Of(Surroundings.Of(Files, text), text).Problems);
    }

    [Fact]
    public void A_circle_of_rules_and_a_rule_that_says_nothing_new_are_told_at_once()
    {
        var draft = File("procedures/isolate-chassis.yaml", "rules:\n", """
            rules:
              - { id: backwards, first: [lock], then: [key-off], because: x, otherwise: y }
              - { id: idle, first: [park-brake], then: [tag], because: x, otherwise: y }

            """);
        var report = DraftCheck.Of(Surroundings.Of(Files, draft), draft);
        Assert.False(report.IsFit);
        Assert.Contains("backwards", report.Loop.Select(part => part.Pair.Rule.Value));
        for (var part = 0; part < report.Loop.Count; part++)
            Assert.Equal(report.Loop[part].Pair.Then, report.Loop[(part + 1) % report.Loop.Count].Pair.First);
        var idle = Assert.Single(report.Redundant);
        Assert.Equal("idle", idle.Rule.Value);
        Assert.Contains("id: idle", draft.Text.Split('\n')[idle.Line - 1], StringComparison.Ordinal);
        Assert.Empty(report.Kinds);
    }

    [Fact]
    public void A_sound_procedure_is_told_its_orders_on_each_kind_of_vehicle()
    {
        var draft = Files.Single(file => file.Path == "procedures/isolate-chassis.yaml");
        var report = DraftCheck.Of(Surroundings.Of(Files, draft), draft);
        Assert.True(report.IsFit);
        Assert.Equal(["bus-l18", "truck-k26"], report.Kinds.Select(kind => kind.Grader.Variant!.Value.Value));
        foreach (var kind in report.Kinds)
        {
            Assert.True(kind.Grader.Grade(new Answer(kind.Right)).Value.Accepted);
            Assert.NotNull(kind.Wrong);
            Assert.Contains(kind.Wrong.Verdict.Findings, finding => finding.Subject == kind.Wrong.Rule!.Value.Value);
            Assert.InRange(kind.GuessChance, 0, 1);
        }
    }

    [Fact]
    public void An_order_that_people_gave_comes_before_one_that_is_made()
    {
        var draft = Files.Single(file => file.Path == "procedures/isolate-chassis.yaml");
        var given = new Answer([new(new("lock")), new(new("key-off"))]);
        var report = DraftCheck.Of(Surroundings.Of(Files, draft), draft, given);
        Assert.All(report.Kinds, kind => Assert.Null(kind.Wrong!.Rule));
        var right = DraftCheck.Of(Surroundings.Of(Files, draft), draft, new Answer(report.Kinds[0].Right));
        Assert.NotNull(right.Kinds[0].Wrong!.Rule);
    }

    [Theory]
    [InlineData("first: a, then: b, at-least: 5 s", "can fill it")]
    [InlineData("first: b, then: a", "listing is not a right order")]
    public void A_procedure_that_has_an_order_and_an_error_is_told_both(string rule, string why)
    {
        var draft = new ContentFile("procedures/isolate-chassis.yaml",
            $"id: isolate-chassis\ntitle: x\nrevision: 1\nsteps: [{{ id: a, do: b }}, {{ id: b, do: c }}]\nrules: [{{ id: r, {rule}, because: x, otherwise: y }}]");
        var report = DraftCheck.Of([], draft);
        Assert.False(report.IsFit);
        Assert.Contains(report.Problems, problem => problem.Sentence.Contains(why, StringComparison.Ordinal));
        Assert.Equal(1, Assert.Single(report.Kinds).Accepted.Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("id: [")]
    [InlineData("steps: nonsense")]
    [InlineData("id: isolate-chassis\ntitle: x\nrevision: 1\nsteps: [{ id: a, do: b }, { id: a, do: c }]\nrules: [{ id: r, first: [zz], then: [a] }]")]
    public void A_broken_text_is_told_its_problems_and_nothing_more(string text)
    {
        var draft = new ContentFile("procedures/isolate-chassis.yaml", text);
        var report = DraftCheck.Of(Surroundings.Of(Files, draft), draft);
        Assert.NotEmpty(report.Problems);
        Assert.Empty(report.Kinds);
    }

    private static ContentFile File(string path, string from, string to)
    {
        var file = Files.Single(file => file.Path == path);
        Assert.Contains(from, file.Text, StringComparison.Ordinal);
        return file with { Text = file.Text.Replace(from, to, StringComparison.Ordinal) };
    }
}

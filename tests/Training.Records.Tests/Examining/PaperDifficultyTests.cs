using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Examining;
using Training.Records.Publishing;
using Training.Sequencing.Drawing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Examining;

/// <summary>Papers of one competency ask different things and are alike in difficulty, measured by the points of blind answers.</summary>
public sealed class PaperDifficultyTests
{
    private static readonly Dictionary<(QuestionKind, ScenarioId), int> NoNeighbours = [];

    // In four easy scenarios two steps are left to do, in four hard ones seven: drawn without care, one paper would have two
    // easy ones and another two hard ones.
    private static readonly string[] Steps = ["a", "b", "c", "d", "e", "f", "g", "h"];

    // Each on a procedure of its own: no question of a paper may show what another asks.
    private static readonly string[] Names = [.. Enumerable.Range(1, 4).SelectMany(number => new[] { $"hard-{number}", $"easy-{number}" })];

    [Fact]
    public async Task Papers_of_one_blueprint_are_of_like_difficulty_whatever_the_seed()
    {
        await using var world = await Published();
        var (library, draw) = (world.One<Library>().Current, world.One<PaperDraw>());
        var blueprint = library.Content.FindCompetency(new("chain"))!.Paper;
        var usual = await draw.BlindPoints(library, blueprint);
        var (easy, hard) = (await draw.BlindPoints(library, [(QuestionKind.Finish, new("easy-1"))]), await draw.BlindPoints(library, [(QuestionKind.Finish, new("hard-1"))]));
        Assert.True(easy > hard + 20, $"{easy} and {hard}");
        for (var seed = 1; seed <= 100; seed++)
        {
            var points = await draw.BlindPoints(library, await draw.Scenarios(library, blueprint, seed, NoNeighbours));
            Assert.InRange(points, usual - 5, usual + 5);
        }
    }

    [Fact]
    public async Task Seeds_still_give_different_papers()
    {
        await using var world = await Published();
        var (library, draw) = (world.One<Library>().Current, world.One<PaperDraw>());
        var blueprint = library.Content.FindCompetency(new("chain"))!.Paper;
        var papers = new HashSet<string>();
        for (var seed = 1; seed <= 100; seed++)
            papers.Add(string.Join(' ', (await draw.Scenarios(library, blueprint, seed, NoNeighbours)).Select(asked => asked.Scenario)));
        Assert.True(papers.Count > 10, string.Join('\n', papers));
    }

    [Fact]
    public async Task The_measure_is_the_same_each_time()
    {
        await using var world = await Published();
        await using var other = await Published();
        (QuestionKind, ScenarioId)[] asked = [(QuestionKind.Finish, new("hard-1")), (QuestionKind.Finish, new("easy-2"))];
        Assert.Equal(
            await world.One<PaperDraw>().BlindPoints(world.One<Library>().Current, asked),
            await other.One<PaperDraw>().BlindPoints(other.One<Library>().Current, asked));
    }

    [Fact]
    public async Task A_job_to_put_in_order_or_to_finish_is_put_alike_from_its_seed_for_ever()
    {
        // Papers were drawn from these: a change here would put other questions than were answered.
        await using var world = await Create();
        var library = world.One<Library>().Current;
        Assert.Equal(
            "finish: key-off rest | hose stow-boom bench hook lift-tray\norder: | key-off hook stow-boom rest hose bench lift-tray",
            $"{await Put(QuestionKind.Finish)}\n{await Put(QuestionKind.Order)}");

        async Task<string> Put(QuestionKind kind)
        {
            var view = Ok(await world.One<Questions>().Draw(library, new("tray-half"), kind, new SeededDraw(7))).View("en");
            return $"{(kind == QuestionKind.Finish ? "finish" : "order")}: {string.Join(' ', view.Start.Select(step => step.Id))} | {string.Join(' ', view.Offered.Select(step => step.Id))}"
                .Replace(":  |", ": |", StringComparison.Ordinal);
        }
    }

    private static async Task<TestWorld> Published()
    {
        var world = await Empty();
        await world.One<Publisher>().Publish(
            [.. FilesWith("modules/01-trays/lesson.md", "procedures: [change-tray, stow-tray, change-rack]", $"procedures: [change-tray, stow-tray, change-rack, {string.Join(", ", Names)}]"), .. Chains()]);
        return world;
    }

    private static IEnumerable<ContentFile> Chains()
    {
        foreach (var name in Names)
            yield return new($"procedures/{name}.yaml", $"""
            id: {name}
            title: A chain of steps
            revision: 1
            steps:
            {string.Join('\n', Steps.Select(step => $"  - {{ id: {step}, do: Do {step} }}"))}
            rules:
            {string.Join('\n', Steps.Zip(Steps.Skip(1), (one, next) => $"  - {{ id: {one}{next}, first: [{one}], then: [{next}], because: It is so, otherwise: It fails, harm: work, severity: minor }}"))}
            """);
        for (var number = 1; number <= 4; number++)
        {
            yield return Scenario($"hard-{number}", done: 1);
            yield return Scenario($"easy-{number}", done: 6);
        }

        yield return new("competencies/chain.yaml", """
            id: chain
            title: Chains
            modules: [01-trays]
            paper:
              questions:
                - { kind: finish, from: [easy-1, easy-2, easy-3, easy-4, hard-1, hard-2, hard-3, hard-4], count: 2 }
              time: 10 min
              pass-mark: 80
              wait-after-failed: P1D
            valid-for: P6M
            renew-from: P1M
            on-new-revision: keep
            """);

        static ContentFile Scenario(string id, int done) => new($"scenarios/{id}.md", $"""
            ---
            title: A chain
            procedure: {id}
            kinds: [finish]
            start: [{string.Join(", ", Steps.Take(done))}]
            ---
            Eight steps, one after another.
            """);
    }
}

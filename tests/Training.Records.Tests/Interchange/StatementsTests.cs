using System.Text.Json.Nodes;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Interchange;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Interchange;

/// <summary>
/// Statements of IEEE 9274.1.1 (xAPI 2.0). Seen in the text of its forerunner 1.0.3: what a statement must have, the range
/// of a score, ids joined by <c>[,]</c>, that a list of right orders is advised against where they are many. From memory:
/// the version's number, the addresses of verbs and activity types.
/// </summary>
public sealed class StatementsTests
{
    [Fact]
    public async Task A_way_from_paper_to_run_is_told_in_statements_that_have_what_they_must()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var all = await All(world, world.Administrator);
        Assert.NotEmpty(all);
        foreach (var statement in all)
        {
            Assert.True(Guid.TryParseExact((string?)statement["id"], "D", out _));
            Assert.Equal("2.0.0", (string?)statement["version"]);
            Assert.Equal("https://eastvale.example", (string?)statement["actor"]!["account"]!["homePage"]);
            Assert.Equal(world.Technician.Person.ToString(), (string?)statement["actor"]!["account"]!["name"]);
            Assert.True(Uri.TryCreate((string?)statement["verb"]!["id"], UriKind.Absolute, out _));
            Assert.True(Uri.TryCreate((string?)statement["object"]!["id"], UriKind.Absolute, out _));
            Assert.NotNull((bool?)statement["result"]!["success"]);
            if (statement["result"]!["score"] is { } score)
            {
                Assert.InRange((decimal)score["scaled"]!, -1, 1);
                Assert.InRange((decimal)score["raw"]!, (decimal)score["min"]!, (decimal)score["max"]!);
                Assert.Equal((decimal)score["raw"]! / 100, (decimal)score["scaled"]!);
            }

            Assert.DoesNotContain("Amara", statement.ToJsonString(), StringComparison.Ordinal);
        }

        Assert.Contains(all, statement => ((string?)statement["object"]!["id"])!.EndsWith("competencies/relay-trays/paper", StringComparison.Ordinal) && (bool)statement["result"]!["success"]!);
        var runs = all.FindAll(statement => statement["context"]?["instructor"] is not null);
        Assert.Contains(runs, run => ((string)run["result"]!["response"]!).Contains("[,]", StringComparison.Ordinal));
        Assert.All(runs, run => Assert.StartsWith("PT", (string?)run["result"]!["duration"], StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_attempt_has_the_same_id_whenever_it_is_told_and_no_other_has_it()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        var first = (await All(world, world.Administrator)).ConvertAll(statement => (string?)statement["id"]);
        await world.Restart();
        Assert.Equal(first, (await All(world, world.Trainer)).Select(statement => (string?)statement["id"]));
        Assert.Distinct(first);
    }

    [Fact]
    public async Task What_is_still_examined_never_says_what_is_right()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Assert.DoesNotContain(await All(world, world.Administrator), statement => statement.ToJsonString().Contains("correctResponsesPattern", StringComparison.Ordinal));
    }

    [Fact]
    public void Few_right_orders_are_listed_and_many_are_not()
    {
        // Two steps that may change places, one after both.
        Assert.Equal(["a[,]b[,]c", "b[,]a[,]c"], Statements.Listed(Orders(3, after: true)));
        // Four steps in any order have 24.
        Assert.Empty(Statements.Listed(Orders(4, after: false)));
    }

    [Fact]
    public async Task One_shop_and_one_time_can_be_asked_for()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        Assert.Empty(await All(world, world.Administrator, world.Brackenhill));
        Assert.NotEmpty(await All(world, world.Administrator, world.Quillmoor));
        var until = Instant.FromUtc(2026, 3, 1, 0, 0);
        Assert.Empty(await All(world, world.Administrator, null, until));
    }

    [Fact]
    public async Task They_are_for_administrators_and_trainers_and_want_the_address_of_the_house()
    {
        await using var world = await Create();
        foreach (var other in new[] { world.Owner, world.Technician, world.Examiner })
            NotAllowed(await world.With<Statements, Outcome<WrittenStatements, Refusal>>(statements => statements.Of(other, null, Instant.MinValue, Instant.MaxValue)));
        world.Address = null;
        Refused(
            await world.With<Statements, Outcome<WrittenStatements, Refusal>>(statements => statements.Of(world.Administrator, null, Instant.MinValue, Instant.MaxValue)),
            "No address is set.");
    }

    [Theory]
    // PT4H35M59.14S = PT16559.14S, and a length is compared to the hundredth of a second (xAPI 1.0.3, section 4.6; seen).
    [InlineData(16559.14, "PT16559.14S")]
    [InlineData(60, "PT60S")]
    public void A_length_of_time_is_written_to_the_hundredth_of_a_second(double seconds, string written) =>
        Assert.Equal(written, StatementJson.Length(NodaTime.Duration.FromSeconds(seconds)));

    // "tim[,]mike[,]ells[,]ben" (xAPI 1.0.3, appendix C; seen).
    [Fact]
    public void An_order_is_joined_as_the_standard_joins_it() =>
        Assert.Equal("tim[,]mike[,]ells[,]ben", StatementJson.Joined(["tim", "mike", "ells", "ben"]));

    private static RightOrderDraw Orders(int steps, bool after)
    {
        StepId[] names = [.. Enumerable.Range(0, steps).Select(index => new StepId(((char)('a' + index)).ToString()))];
        return RightOrderDraw.Of(Grader.For(new Procedure(new("few"), "Few", 1)
        {
            Steps = [.. names.Select(name => new Step(name, $"Do {name}"))],
            Rules = after ? [new OrderRule(new("last"), [.. names.SkipLast(1)], [names[^1]])] : [],
        }).Value);
    }

    private static async Task<List<JsonNode>> All(TestWorld world, Actor actor, ShopId? shop = null, Instant? until = null) =>
        await world.With<Statements, List<JsonNode>>(async statements =>
        {
            var all = new List<JsonNode>();
            await foreach (var statement in Ok(await statements.Of(actor, shop, Instant.MinValue, until ?? Instant.MaxValue)).All) all.Add(statement);
            return all;
        });
}

using CsCheck;
using Training.Content.Scenarios;

namespace Training.Content.Tests.Shipped;

/// <summary>
/// The faults that the trade knows are named by the rule that they break, and what the trade leaves free stays free.
/// Each wrong order is a right one with one habit in it.
/// </summary>
public sealed class HowPeopleFailTests
{
    private const string RightTruck =
        "tell-people park-brake loads-off key-off take-key leave-cab chocks wait-empty:90 open-isolator-truck lock tag "
        + "drain prove-on-battery test-dead prove-again";

    private const string RightRemoval =
        "key-off protect open-cover wait-empty:90 isolate-truck negative-off positive-off bridge-off hold-down-off "
        + "lift-two store";

    private static readonly string[][] UnitsOff =
    [
        ["engine-slide", "engine-lever", "engine-cap"],
        ["brake-latch", "brake-cap"],
        ["row-1", "row-2", "row-3"],
        ["after-slide", "after-pull", "after-cap"],
    ];

    private static readonly string[][] UnitsOn =
    [
        ["engine-inspect", "engine-seat", "engine-slide-home"],
        ["brake-inspect", "brake-seat", "brake-tug"],
        ["row-3-on", "row-2-on", "row-1-on"],
        ["after-inspect", "after-seat", "after-slide-home"],
    ];

    [Fact]
    public void The_shipped_content_has_no_problem() => Assert.Empty(ShippedContent.Reading.Problems);

    [Fact]
    public void Competencies_stand_in_the_order_in_which_most_of_what_they_need_is_taught() => Assert.Equal(
        ["electrical-isolation", "batteries", "control-units", "return-to-service"],
        ShippedContent.Library.Competencies.Select(competency => competency.Id.Value).Where(id =>
            id is "batteries" or "control-units" or "electrical-isolation" or "return-to-service"));

    [Fact]
    public void Every_module_has_at_least_three_scenarios_and_both_kinds_of_question()
    {
        foreach (var module in ShippedContent.Library.Modules)
        {
            Scenario[] scenarios = [.. ShippedContent.Library.Scenarios.Where(scenario =>
                scenario.Procedure is { } procedure && module.Procedures.Contains(procedure))];
            Assert.True(scenarios.Length >= 3, module.Id.Value);
            Assert.Contains(scenarios, scenario => scenario.Kinds.Contains(QuestionKind.Order));
            Assert.Contains(scenarios, scenario => scenario.Kinds.Contains(QuestionKind.Finish));
        }
    }

    [Theory]
    [InlineData("wait-empty:90 open-isolator-truck", "open-isolator-truck wait-empty:90", "wait-before-isolator ninety-seconds")]
    [InlineData("wait-empty:90", "wait-empty:60", "ninety-seconds")]
    [InlineData("key-off take-key leave-cab chocks wait-empty:90", "wait-empty:90 key-off take-key leave-cab chocks", "count-from-key ninety-seconds")]
    [InlineData("open-isolator-truck lock", "lock open-isolator-truck", "lock-open")]
    [InlineData("open-isolator-truck lock", "open-isolator-bus lock", "open-isolator-bus open-isolator-truck lock-open")]
    [InlineData("test-dead prove-again", "test-dead", "prove-again")]
    [InlineData("lock tag", "share-lock tag", "share-lock lock")]
    public void A_habit_at_the_isolator_is_named(string right, string habit, string subjects) =>
        ShippedContent.AssertNamed("isolate-chassis", "truck-k26", RightTruck, right, habit, subjects);

    [Theory]
    [InlineData("negative-off positive-off", "positive-off negative-off", "negative-first")]
    [InlineData("isolate-truck negative-off", "negative-off isolate-truck", "dead-first")]
    [InlineData("positive-off bridge-off", "bridge-off positive-off", "bridge-last")]
    [InlineData("negative-off", "negative-off spanner-on-top", "spanner-on-top")]
    public void A_habit_at_the_batteries_is_named_and_called_unsafe(string right, string habit, string subjects) =>
        Assert.False(ShippedContent.AssertNamed("remove-batteries", "truck-k26", RightRemoval, right, habit, subjects).Safe);

    [Fact]
    public void What_may_be_done_inside_the_wait_is_left_free() => Assert.True(ShippedContent.Grade(
        "isolate-chassis", "truck-k26",
        "prove-on-unit park-brake key-off wait-empty:90 take-key loads-off leave-cab tell-people chocks open-isolator-truck "
        + "tag lock drain test-dead prove-again").Accepted);

    [Fact]
    public void Units_may_be_unplugged_in_any_order_and_interleaved() => Interleavings(UnitsOff).Sample(order =>
        Assert.True(ShippedContent.Grade("unplug-control-units", null, $"prove-dead brush {order} count-caps").Accepted));

    [Fact]
    public void Units_may_be_plugged_in_in_any_order_and_interleaved() => Interleavings(UnitsOn).Sample(order =>
        Assert.True(ShippedContent.Grade("refit-control-units", null, $"prove-dead {order} last-look").Accepted));

    [Theory]
    [InlineData("row-1 row-2 row-3", true)]
    [InlineData("row-1 row-3 row-2", false)]
    [InlineData("row-2 row-1 row-3", false)]
    [InlineData("row-2 row-3 row-1", false)]
    [InlineData("row-3 row-1 row-2", false)]
    [InlineData("row-3 row-2 row-1", false)]
    public void The_row_comes_off_in_one_order(string row, bool accepted) => Assert.Equal(accepted, ShippedContent.Grade(
        "unplug-control-units", null, "prove-dead brush engine-slide engine-lever engine-cap brake-latch brake-cap "
        + row + " after-slide after-pull after-cap count-caps").Accepted);

    [Fact]
    public void The_row_that_goes_on_as_it_came_off_is_refused()
    {
        var verdict = ShippedContent.Grade("refit-control-units", null,
            "prove-dead engine-inspect engine-seat engine-slide-home brake-inspect brake-seat brake-tug "
            + "row-1-on row-2-on row-3-on after-inspect after-seat after-slide-home last-look");
        Assert.Equal(["row-three-two", "row-two-one"], verdict.Findings.Select(finding => finding.Subject).Order());
    }

    // Deals the chains together as one deals cards: which chain gives its next step is drawn at each place.
    private static Gen<string> Interleavings(string[][] chains) =>
        Gen.Shuffle(chains.SelectMany((chain, number) => chain.Select(_ => number)).ToArray()).Select(turns =>
        {
            var next = new int[chains.Length];
            return string.Join(' ', turns.Select(chain => chains[chain][next[chain]++]));
        });
}

using System.Numerics;
using Training.Sequencing.Analysis;

namespace Training.Sequencing.Tests.Analysis;

/// <summary>What an analysis says where it may not count.</summary>
public sealed class EstimateTests
{
    private static readonly AnalysisLimits NoRoom = new(0, 1_000);

    [Fact]
    public void Most_intervals_hold_the_true_number_and_all_estimates_are_near_it()
    {
        var held = 0;
        foreach (var name in CountTests.Counted.Select(row => row.Data))
        {
            var (size, pairs, count) = CountTests.CountedPoset(name);
            var estimate = RightOrderDraw.Of(Posets.Procedure(size, pairs).Grader(), NoRoom).Accepted;
            if (estimate.Low <= count && count <= estimate.High) held++;
            Assert.InRange((double)estimate.Count / (double)count, 0.5, 2);
            Assert.True(estimate.Low <= estimate.Count && estimate.Count <= estimate.High);
        }

        Assert.InRange(held, 21, 24);
    }

    [Fact]
    public void A_forest_is_estimated_exactly_as_every_draw_gives_its_number()
    {
        var (size, pairs) = Posets.Tree(15);
        var estimate = RightOrderDraw.Of(Posets.Procedure(size, pairs).Grader(), NoRoom).Accepted;
        Assert.Equal(21964800, estimate.Count);
    }

    [Fact]
    public void An_estimate_says_so_and_is_the_same_each_time()
    {
        var (size, pairs) = Posets.Grid(8, 8);
        var grader = Posets.Procedure(size, pairs).Grader();
        var estimate = RightOrderDraw.Of(grader, new(500, 200)).Accepted;
        Assert.False(estimate.IsExact);
        Assert.True(estimate.Low < estimate.High);
        Assert.Equal(estimate, RightOrderDraw.Of(grader, new(500, 200)).Accepted);
    }

    [Fact]
    public void What_is_not_counted_is_still_drawn_rightly()
    {
        var (size, pairs) = Posets.Grid(8, 9);
        var orders = RightOrderDraw.Of(Posets.Procedure(size, pairs).Grader(), new(500, 5));
        Assert.False(orders.IsUniform);
        var lots = new Sequencing.Drawing.SeededDraw(1);
        for (var d = 0; d < 5; d++) Assert.True(orders.Grader.Grade(new(orders.Draw(lots))).Value.Accepted);
    }

    [Fact]
    public void More_choices_than_are_looked_through_are_drawn_from()
    {
        // 13 choices of two, one behind the other: 2^13 combinations of one order each.
        var steps = Enumerable.Range(0, 26).Select(s => new Procedures.Step(new($"s{s}"), "Do") { Choice = new($"g{s / 2}") });
        var rules = Enumerable.Range(0, 12).Select(g =>
            Sample.Order($"r{g}", [$"s{2 * g}", $"s{(2 * g) + 1}"], [$"s{(2 * g) + 2}", $"s{(2 * g) + 3}"]));
        var grader = new Procedures.Procedure(new("many"), "Many", 1) { Steps = [.. steps], Rules = [.. rules] }.Grader();
        var accepted = RightOrderDraw.Of(grader, new(1000, 20)).Accepted;
        Assert.False(accepted.IsExact);
        Assert.Equal(BigInteger.Pow(2, 13), accepted.Count);
    }
}

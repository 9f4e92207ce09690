using Training.Sequencing.Analysis;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Analysis;

public sealed class DrawTests
{
    private const int DrawsAnOrder = 200;

    /// <summary>The chance that a chi-square is above this many standard deviations is below one in ten thousand.</summary>
    private const double Deviations = 4.5;

    public static TheoryData<string> SmallPosets => ["antichain", "chains", "n", "subsets", "crown", "fence", "tree", "twins", "mixed", "series"];

    [Theory]
    [MemberData(nameof(SmallPosets))]
    public void Every_right_order_is_drawn_as_often_as_the_others(string name)
    {
        var (size, pairs) = Poset(name);
        AssertUniform(Posets.Procedure(size, pairs));
    }

    [Fact]
    public void Every_right_order_of_every_choice_is_drawn_as_often_as_the_others() =>
        // The bench needs the rag first, the hook and the rack do not: the choices have unlike numbers of orders.
        AssertUniform(new Procedure(new("park"), "Park", 1)
        {
            Steps =
            [
                new(Sample.Id("rag"), "Lay out a rag"),
                new(Sample.Id("lift"), "Lift"),
                new(Sample.Id("hook"), "Hang") { Choice = new("place") },
                new(Sample.Id("rack"), "Slide in") { Choice = new("place") },
                new(Sample.Id("bench"), "Lay down") { Choice = new("place") },
            ],
            Rules = [Sample.Order("r1", ["lift"], ["hook", "rack", "bench"]), Sample.Order("r2", "rag", "bench")],
        });

    [Fact]
    public void Every_drawn_order_is_accepted() => Check.Sample((procedure, grader, seed) =>
    {
        var orders = RightOrderDraw.Of(grader);
        var order = orders.Draw(new SeededDraw(seed));
        Assert.True(grader.Grade(new(order)).Value.Accepted);
        Assert.All(order, entry => Assert.False(procedure.Steps.Single(step => step.Id == entry.Step).IsOptional));
    });

    [Fact]
    public void Every_drawn_start_is_possible_and_leaves_something_to_do() => Check.Sample((_, grader, seed) =>
    {
        var orders = RightOrderDraw.Of(grader);
        var start = orders.DrawStart(new SeededDraw(seed));
        var all = orders.Draw(new SeededDraw(seed));
        Assert.Equal(all.Take(start.Count), start);
        Assert.Equal(all.Count < 2, start.Count == 0);
        Assert.True(start.Count == 0 || start.Count < all.Count);
        Assert.Null(grader.CheckStart(start));
    });

    [Fact]
    public void A_planted_fault_is_the_only_one_and_stands_where_it_is_said_to_stand() => Check.Sample((procedure, grader, seed) =>
    {
        var orders = RightOrderDraw.Of(grader);
        StepId[] decoys = [.. procedure.Decoys.Select(decoy => decoy.Id)];
        foreach (var kind in Enum.GetValues<FindingKind>())
        {
            if (PlantedFault.Draw(orders, [kind], decoys, new SeededDraw(seed)) is not { } planted) continue;
            var verdict = grader.Grade(planted.Answer).Value;
            var finding = Assert.Single(verdict.Findings);
            Assert.Equal(kind, finding.Kind);
            Assert.Equal(planted.Finding.Message, finding.Message);
            Assert.Equal(kind == FindingKind.Missing, planted.Place is null);
            if (planted.Place is { } place)
            {
                Assert.Contains(place, finding.Places);
                Assert.DoesNotContain(verdict.Replay.Take(place - 1), entry => entry.Findings.Count > 0);
            }
        }
    });

    [Fact]
    public void Faults_of_all_kinds_can_be_planted_but_an_extra_choice()
    {
        var orders = RightOrderDraw.Of(Sample.RelayTray.Grader());
        var planted = Enum.GetValues<FindingKind>().Where(kind => Enumerable.Range(0, 20).Any(seed =>
            PlantedFault.Draw(orders, [kind], [Sample.Id("hose")], new SeededDraw(seed)) is not null));
        Assert.Equal(
            [FindingKind.Missing, FindingKind.Decoy, FindingKind.Repeated, FindingKind.Order, FindingKind.TooSoon],
            planted);
    }

    [Fact]
    public void The_same_seed_draws_the_same_order_in_every_version()
    {
        var (size, pairs) = Posets.Subsets(3);
        var orders = RightOrderDraw.Of(Posets.Procedure(size, pairs).Grader());
        var drawn = Enumerable.Range(1, 4).Select(seed => orders.Draw(new SeededDraw(seed)).Short());
        Assert.Equal(StoredOrders, drawn);
        var tray = RightOrderDraw.Of(Sample.RelayTray.Grader("crane"));
        Assert.Equal(StoredTray, tray.Draw(new SeededDraw(5)).Short());
    }

    private static readonly string[] StoredOrders =
    [
        "p0 p4 p2 p1 p6 p5 p3 p7", "p0 p4 p1 p2 p6 p5 p3 p7", "p0 p4 p1 p5 p2 p3 p6 p7", "p0 p2 p4 p6 p1 p5 p3 p7",
    ];

    private const string StoredTray = "key-off rest:60 lift-tray stow-boom hook";

    private static (int, (int, int)[]) Poset(string name) => name switch
    {
        "antichain" => Posets.Chains(1, 1, 1, 1),
        "chains" => Posets.Chains(2, 3),
        "n" => Posets.Order(4, (a, b) => (a, b) is (0, 2) or (1, 2) or (1, 3)),
        "subsets" => Posets.Subsets(3),
        "crown" => Posets.Crown(3),
        "fence" => Posets.Fence(5),
        "tree" => Posets.Tree(7),
        // Three that nothing tells apart under one that two chains end at.
        "twins" => Posets.Order(6, (a, b) => (a < 3 && b is 3 or 4) || (a == 5 && b == 4)),
        "mixed" => Posets.Order(6, (a, b) => (a, b) is (0, 2) or (1, 2) or (1, 3) or (4, 5)),
        "series" => Posets.Order(6, (a, b) => (a < 3 && b >= 3) || (a, b) is (0, 1) or (3, 4)),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such poset."),
    };

    private static void AssertUniform(Procedure procedure)
    {
        var orders = RightOrderDraw.Of(procedure.Grader());
        Assert.True(orders.IsUniform);
        var count = (int)orders.Accepted.Count;
        var lots = new SeededDraw(42);
        var seen = Enumerable.Range(0, count * DrawsAnOrder).GroupBy(_ => orders.Draw(lots).Short()).Select(same => same.Count()).ToArray();
        Assert.Equal(count, seen.Length);
        var chiSquare = seen.Sum(times => (double)(times - DrawsAnOrder) * (times - DrawsAnOrder) / DrawsAnOrder);
        var freedom = count - 1;
        Assert.InRange(chiSquare, 0, freedom + (Deviations * Math.Sqrt(2.0 * freedom)));
    }

    /// <summary>Random sound procedures with a seed each.</summary>
    private static class Check
    {
        public static void Sample(Action<Procedure, Grader, long> law)
        {
            for (var seed = 1; seed <= 150; seed++)
            {
                var (procedure, grader) = RandomProcedure.Of(2 + (seed % 11), (ulong)seed * 7919);
                law(procedure, grader, seed);
            }
        }
    }
}

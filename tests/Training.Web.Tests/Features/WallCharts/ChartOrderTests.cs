using Training.Content;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;
using Training.Web.Features.WallCharts;

namespace Training.Web.Tests.Features.WallCharts;

/// <summary>The joint order of a chart against the engine, for every procedure that is taught.</summary>
public sealed class ChartOrderTests
{
    private static readonly ContentLibrary Content = ContentReader.Read(ContentFolder.Read(Path.Combine(Root(), "content"))).Library!;

    public static TheoryData<string> Procedures => [.. Content.Procedures.Select(written => written.Id.Value)];

    [Theory]
    [MemberData(nameof(Procedures))]
    public void What_the_engine_asks_of_a_kind_of_vehicle_stands_on_the_chart(string id)
    {
        var procedure = Content.FindProcedure(new(id))!.Procedure;
        var chart = ChartOrder.Of(procedure);
        var said = Closed(chart.Waits, chart.Places.Count);
        foreach (var kind in Kinds(procedure))
        {
            var asked = Asked(procedure, kind);
            Assert.All(asked, pair => Assert.True(said[Place(chart, pair.First), Place(chart, pair.Then)], $"{kind}: {pair} is missing."));
        }
    }

    [Theory]
    [MemberData(nameof(Procedures))]
    public void What_the_chart_asks_the_engine_asks_of_some_kind_of_vehicle(string id)
    {
        var procedure = Content.FindProcedure(new(id))!.Procedure;
        var chart = ChartOrder.Of(procedure);
        var asked = Kinds(procedure).SelectMany(kind => Asked(procedure, kind))
            .Select(pair => new LinePlanWait(Place(chart, pair.First), Place(chart, pair.Then))).ToHashSet();
        Assert.All(chart.Waits, wait => Assert.Contains(wait, asked));
    }

    [Theory]
    [MemberData(nameof(Procedures))]
    public void Every_step_has_one_place_and_no_wait_is_implied_by_others(string id)
    {
        var procedure = Content.FindProcedure(new(id))!.Procedure;
        var chart = ChartOrder.Of(procedure);
        Assert.Equal(procedure.Steps.Select(step => step.Id.Value).Order(), chart.Places.SelectMany(place => place.Ways).Select(step => step.Id.Value).Order());
        foreach (var wait in chart.Waits.Where(wait => IsFirm(wait.Before) && IsFirm(wait.After)))
        {
            var rest = Closed(chart.Waits.Where(other => other != wait && IsFirm(other.Before) && IsFirm(other.After)), chart.Places.Count);
            Assert.False(rest[wait.Before, wait.After], $"{wait} is implied.");
        }

        bool IsFirm(int place) => !chart.Places[place].Ways.All(way => way.IsOptional);
    }

    /// <summary>What one sheet for several kinds costs: whoever keeps to it works right, in fewer ways.</summary>
    [Fact]
    public void On_one_kind_of_vehicle_the_chart_asks_more_than_the_engine_at_these_places_only() => Assert.Equal(
        ["isolate-chassis, bus-l18: take-key before open-isolator-bus", "isolate-chassis, bus-l18: take-key before tag"],
        from written in Content.Procedures
        let chart = ChartOrder.Of(written.Procedure)
        let said = Closed(chart.Waits, chart.Places.Count)
        from kind in Kinds(written.Procedure)
        let steps = StepsOf(written.Procedure, kind)
        let asked = Asked(written.Procedure, kind)
        from first in steps
        from then in steps
        where said[Place(chart, first), Place(chart, then)] && !asked.Contains((first, then))
        select $"{written.Id}, {kind}: {first} before {then}");

    [Fact]
    public void What_is_done_on_each_kind_in_its_own_way_shares_a_place()
    {
        var places = ChartOrder.Of(Content.FindProcedure(new("isolate-chassis"))!.Procedure).Places;
        Assert.Contains(places, place => place.IsForKinds && place.Ways.Select(way => way.Id.Value).SequenceEqual(["open-isolator-bus", "open-isolator-truck"]));
        Assert.Contains(places, place => place.IsForKinds && place.Ways.Select(way => way.Id.Value).SequenceEqual(["leave-cab"]));
        Assert.Contains(places, place => !place.IsForKinds && place.Ways.Select(way => way.Id.Value).SequenceEqual(["prove-on-battery", "prove-on-unit"]));
    }

    private static IEnumerable<VariantId?> Kinds(Procedure procedure) =>
        procedure.Variants.Count == 0 ? [null] : procedure.Variants.Select(kind => (VariantId?)kind);

    private static int Place(ChartOrder chart, StepId step) => chart.Places.Index().Single(place => place.Item.Ways.Any(way => way.Id == step)).Index;

    private static IReadOnlyList<StepId> StepsOf(Procedure procedure, VariantId? kind) =>
        Grader.For(procedure, kind).Match(grader => grader, faults => throw new InvalidOperationException(faults.ToString())).Order().Steps;

    private static List<(StepId First, StepId Then)> Asked(Procedure procedure, VariantId? kind)
    {
        var order = Grader.For(procedure, kind).Match(grader => grader, faults => throw new InvalidOperationException(faults.ToString())).Order();
        var numbers = order.Steps.Index().ToDictionary(step => step.Item, step => step.Index);
        var closed = Closed(order.Waits.Select(wait => new LinePlanWait(numbers[wait.First], numbers[wait.Then])), order.Steps.Count);
        return [.. from first in order.Steps from then in order.Steps where closed[numbers[first], numbers[then]] select (first, then)];
    }

    private static bool[,] Closed(IEnumerable<LinePlanWait> waits, int count)
    {
        var closed = new bool[count, count];
        foreach (var wait in waits) closed[wait.Before, wait.After] = true;
        for (var between = 0; between < count; between++)
            for (var first = 0; first < count; first++)
                for (var then = 0; then < count; then++)
                    closed[first, then] |= closed[first, between] && closed[between, then];
        return closed;
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Training.sln"))) return folder.FullName;
        throw new DirectoryNotFoundException("The tests run outside the repository.");
    }
}

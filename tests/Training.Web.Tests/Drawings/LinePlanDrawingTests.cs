using CsCheck;
using Microsoft.Extensions.Localization;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;
using Training.Web.Features.Shared;

namespace Training.Web.Tests.Drawings;

/// <summary>The picture of a line plan, and the plan of a procedure.</summary>
public sealed class LinePlanDrawingTests
{
    private static readonly LinePlanWords Words = new("Plan", "after");
    private static readonly IStringLocalizer<Words> English = WordBook.For("en");

    [Fact]
    public void Every_station_is_a_ring_and_every_wait_a_line()
    {
        var plan = new LinePlanPicture(
            [new("Key off"), new("Wait", IsWait: true), new("Lift", "at least 60 s after: Key off"), new("Tag", IsFree: true)],
            [new(0, 1), new(1, 2), new(0, 3)]);
        var svg = Draw(plan);
        Assert.Equal(4, svg.All("circle").Count());
        Assert.Equal(3, svg.All("path").Count() + svg.All("line").Count(line => line.Attribute("stroke-width")!.Value == "5"));
        Assert.Contains(svg.Texts, text => text.Value.StartsWith("at least 60 s", StringComparison.Ordinal));
        Assert.Single(svg.All("circle"), ring => ring.Attribute("stroke-dasharray") is not null);
    }

    [Fact]
    public void The_text_alternative_tells_every_step_its_note_and_what_it_waits_for() =>
        Assert.Equal(
            "1: Key off. 2: Lift (in gloves), after 1. 3: Put away, after 1, 2.",
            Draw(new([new("Key off"), new("Lift", "in gloves"), new("Put away")], [new(0, 1), new(1, 2), new(0, 2)])).Description);

    [Fact]
    public void No_line_runs_through_a_station_that_it_does_not_serve() =>
        Plans((plan, svg) =>
        {
            var rings = Rings(svg);
            foreach (var line in svg.All("line").Where(line => line.Attribute("stroke-width")!.Value == "5"))
            {
                var (x, from, to) = (SvgReading.Number(line, "x1"), SvgReading.Number(line, "y1"), SvgReading.Number(line, "y2"));
                Assert.Equal(x, SvgReading.Number(line, "x2"));
                Assert.DoesNotContain(rings, ring => ring.X == x && ring.Y > from && ring.Y < to);
            }
        });

    [Fact]
    public void Two_lines_in_one_column_never_overlap() =>
        Plans((plan, svg) =>
        {
            var runs = svg.All("line").Where(line => line.Attribute("stroke-width")!.Value == "5")
                .Select(line => (X: SvgReading.Number(line, "x1"), From: SvgReading.Number(line, "y1"), To: SvgReading.Number(line, "y2")));
            foreach (var column in runs.GroupBy(run => run.X))
            {
                var inOrder = column.OrderBy(run => run.From).ToArray();
                foreach (var (above, below) in inOrder.Zip(inOrder.Skip(1))) Assert.True(above.To <= below.From, $"{above} and {below}");
            }
        });

    [Fact]
    public void Stations_stand_below_each_other_in_the_order_of_the_list_and_inside_the_frame() =>
        Plans((plan, svg) =>
        {
            var rings = Rings(svg);
            Assert.Equal(plan.Stations.Count, rings.Length);
            foreach (var (above, below) in rings.Zip(rings.Skip(1))) Assert.True(below.Y - above.Y >= 30);
            Assert.All(rings, ring => Assert.InRange(ring.Y, 0, svg.Size.Height));
            var left = svg.Texts.Select(text => SvgReading.Number(text, "x")).DefaultIfEmpty(svg.Size.Width).Min();
            Assert.All(rings, ring => Assert.True(ring.X + 9 < left, "A ring stands in the texts."));
        });

    [Fact]
    public void A_plan_of_a_procedure_draws_what_no_rule_implies_and_notes_the_least_wait()
    {
        var procedure = new Procedure(new("tray"), "Change the tray", 1)
        {
            Steps =
            [
                new(new("note"), "Write down the codes") { IsOptional = true },
                new(new("key-off"), "Turn the key off"),
                new(new("rest"), "Wait") { IsWait = true },
                new(new("hook"), "Hang it on the hook") { Choice = new("place") },
                new(new("bench"), "Lay it on the bench") { Choice = new("place") },
            ],
            Rules =
            [
                new OrderRule(new("n"), [new("note")], [new("key-off")]),
                new OrderRule(new("w"), [new("key-off")], [new("rest")]),
                new OrderRule(new("t"), [new("rest")], [new("hook"), new("bench")]),
                new OrderRule(new("g"), [new("key-off")], [new("hook"), new("bench")]) { AtLeast = Duration.FromSeconds(60) },
            ],
        };
        var plan = LinePlanOfProcedure.Of(procedure, null, English);
        Assert.Equal(["Write down the codes", "Turn the key off", "Wait", "Hang it on the hook\nor: Lay it on the bench"], plan.Stations.Select(station => station.Text));
        Assert.Equal(["if needed", null, null, "at least 60\u00a0s after: Turn the key off"], plan.Stations.Select(station => station.Note));
        Assert.Equal([true, false, false, true], plan.Stations.Select(station => station.IsFree));
        Assert.Equal([new(0, 1), new(1, 2), new(2, 3)], plan.Waits);
    }

    [Fact]
    public void A_plan_for_one_kind_of_vehicle_leaves_out_the_steps_of_the_others()
    {
        var procedure = new Procedure(new("boom"), "Boom", 1)
        {
            Variants = [new("crane"), new("tipper")],
            Steps = [new(new("stow"), "Stow the boom") { Variants = [new("crane")] }, new(new("drive"), "Drive off")],
        };
        Assert.Equal(2, LinePlanOfProcedure.Of(procedure, null, English).Stations.Count);
        Assert.Equal(["Drive off"], LinePlanOfProcedure.Of(procedure, new("tipper"), English).Stations.Select(station => station.Text));
    }

    private static void Plans(Action<LinePlanPicture, SvgReading> law) =>
        Gen.Select(Gen.Int[1, 16], Gen.Int[1, 6], Gen.Int).Sample(
            (count, density, seed) =>
            {
                var random = new Random(seed);
                var waits = new List<LinePlanWait>();
                for (var after = 1; after < count; after++)
                    for (var before = 0; before < after; before++)
                        if (random.Next(count) < density) waits.Add(new(before, after));
                var plan = new LinePlanPicture([.. Enumerable.Range(0, count).Select(place => new LinePlanStation($"Do & <{place}>"))], Reduced(waits));
                law(plan, Draw(plan));
            },
            iter: 300);

    private static List<LinePlanWait> Reduced(List<LinePlanWait> waits) =>
        [.. waits.Where(wait => !Reaches(waits, wait.Before, wait.After, wait))];

    private static bool Reaches(List<LinePlanWait> waits, int from, int to, LinePlanWait without) =>
        waits.Any(wait => wait != without && wait.Before == from && wait.After <= to && (wait.After == to || Reaches(waits, wait.After, to, without)));

    private static (double X, double Y)[] Rings(SvgReading svg) =>
        [.. svg.All("circle").Select(ring => (SvgReading.Number(ring, "cx"), SvgReading.Number(ring, "cy")))];

    private static SvgReading Draw(LinePlanPicture plan) => SvgReading.Of(LinePlanDrawing.Draw(plan, Words, "p", LinePlanLook.Lesson));
}

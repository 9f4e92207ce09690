using System.Globalization;
using CsCheck;
using NodaTime;
using Training.Web.Drawings;

namespace Training.Web.Tests.Drawings;

public sealed class CoverageDrawingTests
{
    private static readonly LocalDate From = new(2026, 11, 25);
    private static readonly LocalDate To = new(2027, 11, 25);

    private static readonly CoverageWords Words = new(
        "Isolation", "3 needed", day => day.ToString("d MMM uuuu", CultureInfo.InvariantCulture),
        day => day.ToString("MMM", CultureInfo.InvariantCulture), (day, people) => $"From {day:uuuu-MM-dd}: {people}.");

    [Fact]
    public void The_first_day_below_the_need_is_marked_by_a_shape_and_written()
    {
        var svg = Draw(new(From, To, [(From, 3), (new(2027, 3, 4), 2)], 3, new(2027, 3, 4)));
        Assert.Contains("4 Mar 2027", svg.Texts.Select(text => text.Value));
        Assert.Contains("3 needed", svg.Texts.Select(text => text.Value));
        // The sign is a shape of its own and the lack is hatched, so that neither needs colour.
        Assert.Contains(svg.All("path"), path => path.Attribute("d")!.Value.EndsWith('Z'));
        Assert.Contains(svg.All("line"), line => line.Attribute("stroke-width")!.Value == "1" && line.Attribute("x1")!.Value != line.Attribute("x2")!.Value
            && line.Attribute("y1")!.Value != line.Attribute("y2")!.Value);
    }

    [Fact]
    public void The_text_alternative_tells_every_step_and_the_need() =>
        Assert.Equal("From 2026-11-25: 3. From 2027-03-04: 2. 3 needed.", Draw(new(From, To, [(From, 3), (new(2027, 3, 4), 2)], 3, new(2027, 3, 4))).Description);

    [Fact]
    public void Without_a_need_there_is_no_line_and_no_mark()
    {
        var svg = Draw(new(From, To, [(From, 0)], 0, null));
        Assert.DoesNotContain(svg.Texts, text => text.Value.Contains("needed", StringComparison.Ordinal));
        Assert.DoesNotContain(svg.All("line"), line => line.Attribute("stroke-dasharray") is not null);
    }

    [Fact]
    public void Everything_stays_inside_the_picture_whatever_the_numbers() =>
        Gen.Select(Gen.Int[1, 364].HashSet[0, 8], Gen.Int[0, 200], Gen.Int[0, 200], Gen.Int[0, 365]).Sample((days, first, need, below) =>
        {
            List<(LocalDate, int)> steps = [(From, first), .. days.Order().Select((day, index) => (From.PlusDays(day), Math.Max(0, first - index - 1)))];
            var svg = Draw(new(From, To, steps, need, need > 0 ? From.PlusDays(below) : null));
            var (width, height) = svg.Size;
            foreach (var line in svg.All("line"))
            {
                foreach (var x in new[] { "x1", "x2" }) Assert.InRange(SvgReading.Number(line, x), 0, width);
                foreach (var y in new[] { "y1", "y2" }) Assert.InRange(SvgReading.Number(line, y), 0, height);
            }

            foreach (var rect in svg.All("rect"))
            {
                Assert.InRange(SvgReading.Number(rect, "x") + SvgReading.Number(rect, "width"), 0, width);
                Assert.InRange(SvgReading.Number(rect, "y") + SvgReading.Number(rect, "height"), 0, height);
                Assert.InRange(SvgReading.Number(rect, "width"), 0, width);
            }

            foreach (var text in svg.Texts)
            {
                var room = text.Value.Length * 17 * 0.5;
                var x = SvgReading.Number(text, "x");
                var left = (string?)text.Attribute("text-anchor") switch { "end" => x - room, "middle" => x - (room / 2), _ => x };
                Assert.InRange(left, -1, width);
                Assert.InRange(left + room, 0, width + 1);
            }
        }, iter: 300);

    private static SvgReading Draw(CoveragePicture picture) => SvgReading.Of(CoverageDrawing.Draw(picture, Words, "c"));
}

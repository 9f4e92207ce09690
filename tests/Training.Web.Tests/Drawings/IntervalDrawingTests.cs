using CsCheck;
using Training.Web.Drawings;

namespace Training.Web.Tests.Drawings;

public sealed class IntervalDrawingTests
{
    [Fact]
    public void The_bar_reaches_from_the_lower_end_to_the_upper_one_and_the_value_is_a_shape_of_its_own()
    {
        var svg = Draw(new(0.5, 0.25, 0.75, 0, 1));
        var bar = svg.All("line").Single(line => line.Attribute("stroke-width")!.Value == "5");
        var (width, _) = svg.Size;
        var (low, high) = (SvgReading.Number(bar, "x1"), SvgReading.Number(bar, "x2"));
        Assert.Equal(width / 2, (low + high) / 2, 1);
        Assert.Equal((width - 18) / 2, high - low, 1);
        Assert.Single(svg.All("path"), path => path.Attribute("d")!.Value.EndsWith('Z'));
        Assert.Equal("the words", svg.Description);
    }

    [Fact]
    public void Everything_stays_inside_the_picture_whatever_the_numbers() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[-2, 2]).Sample((value, low, high) =>
        {
            var svg = Draw(new(value, low, high, -1, 1));
            Assert.All(svg.All("line"), line =>
            {
                Assert.InRange(SvgReading.Number(line, "x1"), 0, svg.Size.Width);
                Assert.InRange(SvgReading.Number(line, "x2"), 0, svg.Size.Width);
            });
        });

    private static SvgReading Draw(IntervalPicture picture) => SvgReading.Of(IntervalDrawing.Draw(picture, "a share", "the words", "one"));
}

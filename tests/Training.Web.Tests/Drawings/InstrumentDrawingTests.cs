using System.Globalization;
using System.Xml.Linq;
using Training.Web.Drawings;

namespace Training.Web.Tests.Drawings;

public sealed class InstrumentDrawingTests
{
    public static TheoryData<string> Names => [.. Pictures.Keys];

    private static readonly Dictionary<string, InstrumentPicture> Pictures = new()
    {
        ["meter"] = new MeterPicture("Drop across the ground", "The display shows 86 mV.", "86", "mV", false),
        ["clamp"] = new MeterPicture("Current through it", "The display shows 8.5 A.", "8.5", "A", true),
        ["float"] = new ScalePicture("Hydrometer reading", "The surface stands at 1.225.", 1.225m, 0.005m, "", 3, true),
        ["thermometer"] = new ScalePicture("Temperature", "The column ends at 15 °C.", 15, 1, "°C", 0, false),
        ["note"] = new NotePicture("What is known", "Beacon: 3 A; Lamp: 2 A", [new("Beacon", "3 A"), new("Lamp", "2 A")]),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_says_in_words_what_it_shows_and_everything_lies_inside_it(string name)
    {
        var svg = XElement.Parse(InstrumentDrawing.Draw(Pictures[name], "x"));
        Assert.Equal(Pictures[name].Says, svg.Elements().Single(part => part.Name.LocalName == "desc").Value);
        var size = svg.Attribute("viewBox")!.Value.Split(' ').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray();
        foreach (var part in svg.Descendants())
        {
            foreach (var x in new[] { "x", "x1", "x2", "cx" }) if (part.Attribute(x) is { } at) Assert.InRange((double)at, 0, size[2]);
            foreach (var y in new[] { "y", "y1", "y2", "cy" }) if (part.Attribute(y) is { } at) Assert.InRange((double)at, 0, size[3]);
        }
    }

    [Fact]
    public void The_line_that_the_surface_cuts_is_the_value()
    {
        var svg = XElement.Parse(InstrumentDrawing.Draw(Pictures["float"], "x"));
        var lines = svg.Elements().Where(part => part.Name.LocalName == "line" && (double)part.Attribute("x1")! == 104).ToList();
        Assert.Contains(lines, line => (double)line.Attribute("y1")! == 150);
        var number = svg.Elements().Single(part => part.Name.LocalName == "text" && part.Value == "1.220");
        Assert.Equal(150 - 11 + 6, (double)number.Attribute("y")!, 1e-9);
    }
}

using System.Xml.Linq;
using CsCheck;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;

namespace Training.Web.Tests.Drawings;

/// <summary>The picture of a replay.</summary>
public sealed class ReplayDrawingTests
{
    private static readonly ReplayWords Words = new("Replay", "clock", "Not done:", "Fault");

    private static readonly ReplayPicture Small = new(
        [new("key", ["on", "off"], 0), new("isolator", ["closed", "open"], 0)],
        [
            new("1", "Open the isolator & see <b>", "0:00", [0, 1], [new(1, Severity.Critical)]),
            new("2", "Turn the key off", "0:05", [1, 1], []),
            new("3", "Wait (30 s)", "0:10", [1, 1], [new(2, Severity.Minor), new(3, Severity.Serious)]),
        ],
        [new("Put on the lock", new(4, Severity.Critical))]);

    [Fact]
    public void Every_entry_has_a_row_with_its_place_its_clock_and_its_text()
    {
        var svg = Draw(Small);
        foreach (var row in Small.Rows)
        {
            Assert.Contains(svg.Texts, text => text.Value == row.Place && text.Attribute("font-weight")?.Value == "700");
            Assert.Contains(svg.Texts, text => text.Value == row.Clock);
            Assert.Contains(svg.Texts, text => row.Text.StartsWith(text.Value, StringComparison.Ordinal) && text.Value.Length > 3);
        }
    }

    [Fact]
    public void On_a_page_that_is_read_from_the_right_it_keeps_its_sides_and_each_text_its_own_direction()
    {
        var svg = Draw(Small);
        Assert.Equal("ltr", svg.Root.Attribute("direction")!.Value);
        Assert.All(svg.Texts, text => Assert.Equal("plaintext", text.Attribute("unicode-bidi")!.Value));
    }

    [Fact]
    public void Every_fault_has_its_sign_in_the_row_where_it_happened()
    {
        var svg = Draw(Small);
        var rows = svg.All("line").Where(line => SvgReading.Number(line, "x1") == 0 && SvgReading.Number(line, "x2") == svg.Size.Width)
            .Select(line => SvgReading.Number(line, "y1")).ToArray();
        Assert.Equal(5, rows.Length);
        AssertBetween(Mark(svg, "1"), rows[0], rows[1]);
        AssertBetween(Mark(svg, "2"), rows[2], rows[3]);
        AssertBetween(Mark(svg, "3"), rows[2], rows[3]);
        AssertBetween(Mark(svg, "4"), rows[3], rows[4]);
    }

    [Fact]
    public void How_bad_a_fault_is_shows_by_its_shape()
    {
        var corners = new[] { Severity.Critical, Severity.Serious, Severity.Minor }.Select(severity =>
            XDocument.Parse(new FaultMark(1, severity).Draw()).Descendants(SvgReading.Space + "path").Single().Attribute("d")!.Value).ToArray();
        Assert.Equal(3, corners.Distinct().Count());
        Assert.Equal(3, corners[1].Split('L').Length);
    }

    [Fact]
    public void A_sign_beside_a_sentence_is_not_read_out() =>
        Assert.Equal("true", XDocument.Parse(new FaultMark(1, Severity.Minor).Draw()).Root!.Attribute("aria-hidden")!.Value);

    [Fact]
    public void The_text_alternative_tells_every_entry_every_change_and_every_fault()
    {
        var told = Draw(Small).Description;
        Assert.Contains("key: on. isolator: closed.", told, StringComparison.Ordinal);
        Assert.Contains("1, 0:00: Open the isolator & see <b>. isolator: open. Fault 1.", told, StringComparison.Ordinal);
        Assert.Contains("2, 0:05: Turn the key off. key: off.", told, StringComparison.Ordinal);
        Assert.Contains("3, 0:10: Wait (30 s). Fault 2. Fault 3.", told, StringComparison.Ordinal);
        Assert.Contains("Not done: Put on the lock. Fault 4.", told, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_is_named_for_those_who_cannot_see_it()
    {
        var root = Draw(Small).Root;
        Assert.Equal("img", root.Attribute("role")!.Value);
        var named = root.Attribute("aria-labelledby")!.Value.Split(' ');
        Assert.Equal(named, root.Elements().Take(2).Select(part => part.Attribute("id")!.Value));
    }

    [Theory]
    [InlineData(0, "0:00")]
    [InlineData(5.9, "0:05")]
    [InlineData(750, "12:30")]
    [InlineData(3723, "1:02:03")]
    public void The_clock_counts_from_the_start_of_the_job(double seconds, string shown) =>
        Assert.Equal(shown, ReplayDrawing.Clock((decimal)seconds));

    [Fact]
    public void Whatever_happened_the_drawing_is_well_formed_and_keeps_inside_its_frame() =>
        Gen.Select(Gen.Int[0, 6], Gen.Int[0, 30], Gen.Int).Sample(
            (lanes, rows, seed) =>
            {
                var svg = Draw(Some(lanes, rows, new(seed)));
                var (width, height) = svg.Size;
                foreach (var rect in svg.All("rect"))
                {
                    Assert.InRange(SvgReading.Number(rect, "x"), 0, width);
                    Assert.InRange(SvgReading.Number(rect, "y") + SvgReading.Number(rect, "height"), 0, height);
                }

                foreach (var text in svg.Texts.Where(text => text.Attribute("transform") is null))
                    Assert.InRange(SvgReading.Number(text, "y"), 0, height);
            },
            iter: 200);

    [Fact]
    public void Rows_never_overlap_however_long_the_texts_are() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[1, 20], Gen.Int).Sample(
            (lanes, rows, seed) =>
            {
                var svg = Draw(Some(lanes, rows, new(seed)));
                var lines = svg.Texts.Where(text => SvgReading.Number(text, "x") == 38).Select(text => SvgReading.Number(text, "y")).ToArray();
                foreach (var (above, below) in lines.Zip(lines.Skip(1))) Assert.True(below - above >= 17, $"{above} and {below}");
            },
            iter: 200);

    private static ReplayPicture Some(int lanes, int rows, Random random)
    {
        var facts = Enumerable.Range(0, lanes).Select(lane => new ReplayLane($"fact-{lane}", ["one", "two", "three"], random.Next(3))).ToArray();
        var number = 0;
        return new(
            facts,
            [.. Enumerable.Range(1, rows).Select(row => new ReplayRow(
                row.ToString(System.Globalization.CultureInfo.InvariantCulture),
                string.Join(' ', Enumerable.Repeat("word<&>", random.Next(1, 12))),
                "0:00",
                [.. facts.Select(_ => random.Next(3))],
                [.. Enumerable.Range(0, random.Next(3)).Select(_ => new FaultMark(++number, (Severity)random.Next(3)))]))],
            [.. Enumerable.Range(0, random.Next(3)).Select(_ => new ReplayGap("Something long that was left out of the order", new(++number, Severity.Serious)))]);
    }

    private static double Mark(SvgReading svg, string number) =>
        SvgReading.Number(svg.Texts.Single(text => text.Value == number && text.Attribute("font-size")!.Value == "14.5"), "y");

    private static void AssertBetween(double y, double from, double to) => Assert.InRange(y, from, to);

    private static SvgReading Draw(ReplayPicture picture) => SvgReading.Of(ReplayDrawing.Draw(picture, Words, "r"));
}

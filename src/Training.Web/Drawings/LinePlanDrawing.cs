using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>
/// Draws the order of a procedure as a plan of lines from the top down. Steps on one line follow each other; a bar says
/// that everything that runs into it comes before everything that leaves it; a thin curve from line to line says that a
/// step waits for another; what no line joins may be done in any order.
/// </summary>
public static class LinePlanDrawing
{
    private const double Margin = 13;
    private const double LineHeight = 21;
    private const double TextSize = 17;
    private const double MarkWidth = 24;

    // 20 pt, in mm: larger letters would only take room from the reasons.
    private const double LargestOnPaper = 7.06;

    /// <summary>Draws the plan as SVG with a text alternative.</summary>
    /// <param name="plan">The steps and their waits.</param>
    /// <param name="words">The words of the picture in the reader's language.</param>
    /// <param name="id">An id that no other picture of the page has.</param>
    /// <param name="look">How wide it is, and whether the steps bear numbers.</param>
    public static string Draw(LinePlanPicture plan, LinePlanWords words, string id, LinePlanLook look)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(look);
        return Draw(plan, LinePlanLines.Of(plan), words, id, look).ToString(SaveOptions.DisableFormatting);
    }

    /// <summary>
    /// Draws the plan for a place on paper with letters as large as they can be there: a wide drawing has fewer lines of
    /// text and a narrow one larger letters, so several widths are tried.
    /// </summary>
    /// <param name="plan">The steps and their waits.</param>
    /// <param name="words">The words of the picture in the reader's language.</param>
    /// <param name="id">An id that no other picture of the page has.</param>
    /// <param name="width">The width of the place in mm.</param>
    /// <param name="height">The height of the place in mm.</param>
    public static PaperDrawing DrawOnPaper(LinePlanPicture plan, LinePlanWords words, string id, double width, double height)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(words);
        var lines = LinePlanLines.Of(plan);
        var (svg, scale) = Enumerable.Range(0, 20).Select(step => LinePlanLook.Paper(300 + (20 * step)))
            .Select(look => Draw(plan, lines, words, id, look))
            .Select(drawn => (drawn, Scale: Math.Min(LargestOnPaper / TextSize, Math.Min(width / Size(drawn).Width, height / Size(drawn).Height))))
            .MaxBy(drawn => drawn.Scale);
        var (wide, tall) = (Size(svg).Width * scale, Size(svg).Height * scale);
        svg.Add(new XAttribute("width", Svg.N(wide) + "mm"), new XAttribute("height", Svg.N(tall) + "mm"));
        return new(svg.ToString(SaveOptions.DisableFormatting), wide, tall, TextSize * scale);
    }

    private static (double Width, double Height) Size(XElement svg)
    {
        var box = svg.Attribute("viewBox")!.Value.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        return (box[2], box[3]);
    }

    private static XElement Draw(LinePlanPicture plan, LinePlanLines lines, LinePlanWords words, string id, LinePlanLook look)
    {
        var marksX = Margin + (look.Pitch * lines.Columns.DefaultIfEmpty(0).Max()) + 18;
        var textX = marksX + (plan.Stations.Any(station => station.Mark is not null) ? MarkWidth : 0);
        var charsALine = (int)((look.Width - textX) / (TextSize * look.LetterWidth));
        var (rows, centres, height) = Rows(plan, lines, charsALine, look);
        var svg = Svg.Picture(words.Name, words.InWords ?? Describe(plan, words), look.Width, height, id);
        foreach (var line in Lines(lines, centres, X)) svg.Add(line);
        foreach (var (node, (station, _)) in lines.Nodes.Index())
        {
            if (station is not { } place) continue;
            svg.Add(Stop(plan.Stations[place], X(lines.Columns[node]), centres[node], look.IsNumbered ? place + 1 : null));
            if (plan.Stations[place].Mark is { } mark) svg.Add(Mark(mark, marksX + (MarkWidth / 2) - 3, centres[node]));
            var y = centres[node] + 6;
            foreach (var row in rows[place])
            {
                svg.Add(Svg.Text(textX, y, row.Line, row.IsNote ? TextSize - 1 : TextSize, row.IsNote ? Svg.Work : Svg.Ink, weight: row.IsNote ? "600" : null));
                y += LineHeight;
            }
        }

        return svg;

        double X(int column) => Margin + (look.Pitch * column);
    }

    // Curves lie lowest, then bars, then the lines: one that only passes a bar has a gap round it, so that it does not seem to stop there.
    private static IEnumerable<XElement> Lines(LinePlanLines lines, double[] centres, Func<int, double> across)
    {
        List<XElement> curves = [];
        List<(double X, double From, double To)> runs = [];
        var spans = new Dictionary<int, (double From, double To)>();
        foreach (var (before, after) in lines.Edges)
        {
            var (x1, y1, x2, y2) = (across(lines.Columns[before]), centres[before], across(lines.Columns[after]), centres[after]);
            var (enters, leaves) = (lines.Nodes[after].Bar is not null, lines.Nodes[before].Bar is not null);
            if (enters) runs.Add((x1, y1, y2));
            else if (leaves) runs.Add((x2, y1, y2));
            else if (lines.Follows(before, after)) runs.Add((x1, y1, y2));
            else curves.Add(Svg.Path(Curve(x1, y1, x2, y2, lines.Ends(before)), Svg.Work, 2));
            if (enters) Widen(after, x1);
            if (leaves) Widen(before, x2);
        }

        foreach (var curve in curves) yield return curve;
        foreach (var (node, span) in spans)
        {
            yield return Svg.Line(span.From, centres[node], span.To, centres[node], Svg.Work, 6);
            foreach (var run in runs.Where(run => run.X > span.From && run.X < span.To && run.From < centres[node] && run.To > centres[node]))
                yield return Svg.Line(run.X, centres[node] - 6, run.X, centres[node] + 6, Svg.Sheet, 13);
        }

        foreach (var (x, from, to) in runs) yield return Svg.Line(x, from, x, to, Svg.Work, 5);

        void Widen(int bar, double x) => spans[bar] = spans.TryGetValue(bar, out var span)
            ? (Math.Min(span.From, x - 5), Math.Max(span.To, x + 5))
            : (x - 5, x + 5);
    }

    private static string Curve(double x1, double y1, double x2, double y2, bool lineEnds)
    {
        // A wait that skips rows on one line bows out to the left of it, or the line would hide it. A line that has
        // ended runs on in its own column and bends only before the step that waits for it.
        var bow = x1 == x2 ? -14 : 0;
        var mid = Math.Min(60, (y2 - y1) * 0.6);
        var straight = lineEnds && bow == 0 ? Math.Max(y1, y2 - 40) : y1;
        return $"M{Svg.N(x1)} {Svg.N(y1)}V{Svg.N(straight)}C{Svg.N(x1 + bow)} {Svg.N(straight + Math.Min(mid, y2 - straight))} "
            + $"{Svg.N(x2 + bow)} {Svg.N(y2 - Math.Min(mid, y2 - straight))} {Svg.N(x2)} {Svg.N(y2)}";
    }

    private static IEnumerable<XElement> Stop(LinePlanStation station, double x, double y, int? number)
    {
        var ring = Svg.Circle(x, y, number is null ? 9 : 10.5, station.IsWait ? Svg.Work : Svg.Sheet, Svg.Work, number is null ? 3 : 2);
        yield return station.IsFree ? ring.Dashed("3 3") : ring;
        if (number is { } place)
        {
            yield return Svg.Text(x, y + 4.5, place.ToString(CultureInfo.InvariantCulture), 13, station.IsWait ? Svg.Sheet : Svg.Ink, "middle", "700");
            yield break;
        }

        if (!station.IsWait) yield break;
        yield return Svg.Line(x, y, x, y - 6, "#fff", 2);
        yield return Svg.Line(x, y, x + 4, y + 2, "#fff", 2);
    }

    // The triangle of ISO 3864-2 means people; the graver, the darker, so that a sheet in black and white says the same.
    private static IEnumerable<XElement> Mark(SignalWord word, double x, double y)
    {
        var (fill, edge, sign) = word switch
        {
            SignalWord.Danger => (Svg.Danger, Svg.Danger, "#fff"),
            SignalWord.Warning => ("#ffc07a", Svg.Warning, Svg.Ink),
            _ => ("#fff3bf", Svg.Caution, Svg.Ink),
        };
        yield return Svg.Path($"M{Svg.N(x)} {Svg.N(y - 9)}L{Svg.N(x + 9)} {Svg.N(y + 7)}L{Svg.N(x - 9)} {Svg.N(y + 7)}Z", edge, 2, fill);
        yield return Svg.Line(x, y - 4, x, y + 2, sign, 2.4);
        yield return Svg.Line(x, y + 3.6, x, y + 5.6, sign, 2.4);
    }

    private static (List<List<Row>> Rows, double[] Centres, double Height) Rows(LinePlanPicture plan, LinePlanLines lines, int width, LinePlanLook look)
    {
        var rows = new List<List<Row>>();
        var centres = new double[lines.Nodes.Count];
        var y = look.Gap / 2;
        foreach (var (node, (station, _)) in lines.Nodes.Index())
        {
            if (station is not { } place)
            {
                centres[node] = y + (look.BarHeight / 2) - (look.Gap / 4);
                y += look.BarHeight;
                continue;
            }

            var row = plan.Stations[place].Text.Split('\n').SelectMany(text => Svg.Wrap(text, width)).Select(line => new Row(line, false)).ToList();
            if (plan.Stations[place].Note is { } note) row.AddRange(Svg.Wrap(note, width).Select(line => new Row(line, true)));
            rows.Add(row);
            centres[node] = y + 8 + (look.Gap / 2);
            y += Math.Max(24 + look.Gap, (row.Count * LineHeight) + look.Gap);
        }

        return (rows, centres, y + 4);
    }

    private static string Describe(LinePlanPicture plan, LinePlanWords words)
    {
        var text = new StringBuilder();
        for (var station = 0; station < plan.Stations.Count; station++)
        {
            var behind = plan.Waits.Where(wait => wait.After == station).Select(wait => wait.Before + 1).Order()
                .Select(place => place.ToString(CultureInfo.InvariantCulture)).ToList();
            text.Append(CultureInfo.InvariantCulture, $"{station + 1}: {plan.Stations[station].Text.Replace("\n", "; ", StringComparison.Ordinal)}");
            if (plan.Stations[station].Note is { } note) text.Append(CultureInfo.InvariantCulture, $" ({note})");
            text.Append(behind.Count == 0 ? ". " : $", {words.After} {string.Join(", ", behind)}. ");
        }

        return text.ToString().TrimEnd();
    }

    private readonly record struct Row(string Line, bool IsNote);
}

/// <summary>How a line plan is drawn.</summary>
/// <param name="Width">Its width in units of the picture; the texts are 17 of them tall.</param>
/// <param name="Pitch">How far apart the lines stand, in the same units.</param>
/// <param name="Gap">How far apart the steps stand.</param>
/// <param name="BarHeight">How much room a bar takes.</param>
/// <param name="LetterWidth">How wide a letter is taken to be on average, against its height.</param>
/// <param name="IsNumbered">Whether the steps bear their numbers.</param>
public sealed record LinePlanLook(double Width, double Pitch, double Gap, double BarHeight, double LetterWidth, bool IsNumbered)
{
    /// <summary>Beside the text of a lesson, down to a phone 360 px wide.</summary>
    public static LinePlanLook Lesson { get; } = new(340, 20, 16, 22, 0.55, false);

    /// <summary>On a sheet of paper, where every millimetre is worth larger letters.</summary>
    /// <param name="width">The width in units of the picture.</param>
    public static LinePlanLook Paper(double width) => new(width, 21, 3, 15, 0.5, true);
}

/// <summary>A drawing for a place on paper.</summary>
/// <param name="Svg">The drawing, which says its own size.</param>
/// <param name="Width">Its width in mm.</param>
/// <param name="Height">Its height in mm.</param>
/// <param name="TextSize">The size of its letters in mm.</param>
public sealed record PaperDrawing(string Svg, double Width, double Height, double TextSize);

/// <summary>The words of a line plan in the reader's language.</summary>
/// <param name="Name">What the picture is called.</param>
/// <param name="After">What stands before the places that a step waits for.</param>
/// <param name="InWords">The text alternative, where the page says the order in words itself; null: it is made of the plan.</param>
public sealed record LinePlanWords(string Name, string After, string? InWords = null);

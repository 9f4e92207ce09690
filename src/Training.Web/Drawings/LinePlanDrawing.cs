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
    private const double Pitch = 23;
    private const double Margin = 13;
    private const double LineHeight = 21;
    private const double TextSize = 17;
    private const double BarHeight = 22;

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
        var lines = LinePlanLines.Of(plan);
        var textX = Margin + (Pitch * (lines.Columns.DefaultIfEmpty(0).Max() + 1)) - 4;
        var charsALine = (int)((look.Width - textX) / (TextSize * 0.55));
        var (rows, centres, height) = Rows(plan, lines, charsALine);
        var svg = Svg.Picture(words.Name, Describe(plan, words), look.Width, height, id);
        foreach (var line in Lines(lines, centres)) svg.Add(line);
        foreach (var (node, (station, _)) in lines.Nodes.Index())
        {
            if (station is not { } place) continue;
            svg.Add(Stop(plan.Stations[place], X(lines.Columns[node]), centres[node], look.IsNumbered ? place + 1 : null));
            var y = centres[node] + 6;
            foreach (var (line, isNote) in rows[place])
            {
                svg.Add(Svg.Text(textX, y, line, isNote ? TextSize - 1 : TextSize, isNote ? Svg.Work : Svg.Ink, weight: isNote ? "600" : null));
                y += LineHeight;
            }
        }

        return svg.ToString(SaveOptions.DisableFormatting);
    }

    private static double X(int column) => Margin + (Pitch * column);

    // Curves lie lowest, then bars, then the lines: one that only passes a bar has a gap round it, so that it does not seem to stop there.
    private static IEnumerable<XElement> Lines(LinePlanLines lines, double[] centres)
    {
        List<XElement> curves = [];
        List<(double X, double From, double To)> runs = [];
        var spans = new Dictionary<int, (double From, double To)>();
        foreach (var (before, after) in lines.Edges)
        {
            var (x1, y1, x2, y2) = (X(lines.Columns[before]), centres[before], X(lines.Columns[after]), centres[after]);
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
        var ring = Svg.Circle(x, y, number is null ? 9 : 11, station.IsWait ? Svg.Work : Svg.Sheet, Svg.Work, 3);
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

    private static (List<List<(string Line, bool IsNote)>> Rows, double[] Centres, double Height) Rows(LinePlanPicture plan, LinePlanLines lines, int width)
    {
        var rows = new List<List<(string, bool)>>();
        var centres = new double[lines.Nodes.Count];
        var y = 8.0;
        foreach (var (node, (station, _)) in lines.Nodes.Index())
        {
            if (station is not { } place)
            {
                centres[node] = y + (BarHeight / 2) - 4;
                y += BarHeight;
                continue;
            }

            var row = Svg.Wrap(plan.Stations[place].Text, width).Select(line => (line, false)).ToList();
            if (plan.Stations[place].Note is { } note) row.AddRange(Svg.Wrap(note, width).Select(line => (line, true)));
            rows.Add(row);
            centres[node] = y + 16;
            y += Math.Max(40, (row.Count * LineHeight) + 16);
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
            text.Append(CultureInfo.InvariantCulture, $"{station + 1}: {plan.Stations[station].Text}");
            if (plan.Stations[station].Note is { } note) text.Append(CultureInfo.InvariantCulture, $" ({note})");
            text.Append(behind.Count == 0 ? ". " : $", {words.After} {string.Join(", ", behind)}. ");
        }

        return text.ToString().TrimEnd();
    }
}

/// <summary>How a line plan is drawn.</summary>
/// <param name="Width">Its width in units of the picture; the texts are 17 of them tall.</param>
/// <param name="IsNumbered">Whether the steps bear their numbers.</param>
public sealed record LinePlanLook(double Width, bool IsNumbered)
{
    /// <summary>Beside the text of a lesson, down to a phone 360 px wide.</summary>
    public static LinePlanLook Lesson { get; } = new(340, false);

    /// <summary>On a sheet of paper.</summary>
    public static LinePlanLook Paper { get; } = new(480, true);
}

/// <summary>The words of a line plan in the reader's language.</summary>
/// <param name="Name">What the picture is called.</param>
/// <param name="After">What stands before the places that a step waits for.</param>
public sealed record LinePlanWords(string Name, string After);

using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>
/// Draws the order of a procedure as a plan of lines from the top down. Steps on one line follow each other;
/// a thin curve from line to line says that a step waits for another; what no line joins may be done in any order.
/// </summary>
public static class LinePlanDrawing
{
    private const double Width = 340;
    private const double Pitch = 23;
    private const double Margin = 13;
    private const double LineHeight = 21;
    private const double TextSize = 17;

    /// <summary>Draws the plan as SVG with a text alternative.</summary>
    /// <param name="plan">The steps and their waits.</param>
    /// <param name="words">The words of the picture in the reader's language.</param>
    /// <param name="id">An id that no other picture of the page has.</param>
    public static string Draw(LinePlanPicture plan, LinePlanWords words, string id)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(words);
        var columns = Columns(plan, out var next);
        var textX = Margin + (Pitch * (columns.DefaultIfEmpty(0).Max() + 1)) - 4;
        var charsALine = (int)((Width - textX) / (TextSize * 0.55));
        var (rows, centres, height) = Rows(plan, charsALine);
        var svg = Svg.Picture(words.Name, Describe(plan, words), Width, height, id);
        foreach (var wait in plan.Waits)
        {
            var (x1, y1) = (X(columns[wait.Before]), centres[wait.Before]);
            var (x2, y2) = (X(columns[wait.After]), centres[wait.After]);
            svg.Add(next[wait.Before] == wait.After
                ? Svg.Line(x1, y1, x2, y2, Svg.Work, 5)
                : Svg.Path(Curve(x1, y1, x2, y2, next[wait.Before] < 0), Svg.Work, 2));
        }

        for (var station = 0; station < plan.Stations.Count; station++)
        {
            svg.Add(Stop(plan.Stations[station], X(columns[station]), centres[station]));
            var y = centres[station] + 6;
            foreach (var (line, isNote) in rows[station])
            {
                svg.Add(Svg.Text(textX, y, line, isNote ? TextSize - 1 : TextSize, isNote ? Svg.Work : Svg.Ink, weight: isNote ? "600" : null));
                y += LineHeight;
            }
        }

        return svg.ToString(SaveOptions.DisableFormatting);
    }

    private static double X(int column) => Margin + (Pitch * column);

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

    private static IEnumerable<XElement> Stop(LinePlanStation station, double x, double y)
    {
        var ring = Svg.Circle(x, y, 9, station.IsWait ? Svg.Work : Svg.Sheet, Svg.Work, 3);
        yield return station.IsFree ? ring.Dashed("3 3") : ring;
        if (!station.IsWait) yield break;
        yield return Svg.Line(x, y, x, y - 6, "#fff", 2);
        yield return Svg.Line(x, y, x + 4, y + 2, "#fff", 2);
    }

    /// <summary>
    /// Puts each step behind a step that it waits for where that one has no follower yet; otherwise it opens a line.
    /// A line gives its column to another once it has ended and nothing further down waits for a step on it.
    /// </summary>
    private static int[] Columns(LinePlanPicture plan, out int[] next)
    {
        var count = plan.Stations.Count;
        var after = new int[count];
        var line = new int[count];
        Array.Fill(after, -1);
        var ends = new List<(int First, int Last)>();
        for (var station = 0; station < count; station++)
        {
            var behind = plan.Waits.Where(wait => wait.After == station && after[wait.Before] < 0)
                .Select(wait => wait.Before).DefaultIfEmpty(-1).Max();
            if (behind < 0)
            {
                line[station] = ends.Count;
                ends.Add((station, station));
                continue;
            }

            after[behind] = station;
            line[station] = line[behind];
            ends[line[station]] = (ends[line[station]].First, station);
        }

        foreach (var wait in plan.Waits)
        {
            var (first, last) = ends[line[wait.Before]];
            ends[line[wait.Before]] = (first, Math.Max(last, wait.After - 1));
        }

        var freeFrom = new List<int>();
        var column = new int[ends.Count];
        foreach (var (index, span) in ends.Index().OrderBy(end => end.Item.First))
        {
            var place = freeFrom.FindIndex(end => end < span.First);
            if (place < 0)
            {
                place = freeFrom.Count;
                freeFrom.Add(0);
            }

            freeFrom[place] = span.Last;
            column[index] = place;
        }

        next = after;
        return [.. line.Select(index => column[index])];
    }

    private static (List<List<(string Line, bool IsNote)>> Rows, double[] Centres, double Height) Rows(LinePlanPicture plan, int width)
    {
        var rows = new List<List<(string, bool)>>();
        var centres = new double[plan.Stations.Count];
        var y = 8.0;
        for (var station = 0; station < plan.Stations.Count; station++)
        {
            var row = Svg.Wrap(plan.Stations[station].Text, width).Select(line => (line, false)).ToList();
            if (plan.Stations[station].Note is { } note) row.AddRange(Svg.Wrap(note, width).Select(line => (line, true)));
            rows.Add(row);
            centres[station] = y + 16;
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

/// <summary>The words of a line plan in the reader's language.</summary>
/// <param name="Name">What the picture is called.</param>
/// <param name="After">What stands before the places that a step waits for.</param>
public sealed record LinePlanWords(string Name, string After);

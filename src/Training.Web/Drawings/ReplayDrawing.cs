using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>
/// Draws a replay from the top down, so that it can be read on a narrow screen: the steps, a lane for each fact, the
/// clock at the edge, and every fault by shape, number and colour in the row where it happened.
/// </summary>
public static class ReplayDrawing
{
    private const double Width = 340;
    private const double PlaceX = 16;
    private const double TextX = 38;
    private const double LanesEnd = 292;
    private const double LineHeight = 21;
    private const double TextSize = 17;
    private const double SmallSize = 15;
    private const double CharWidth = 0.55;

    /// <summary>Draws the replay as SVG with a text alternative.</summary>
    /// <param name="replay">What to show.</param>
    /// <param name="words">The words of the picture in the reader's language.</param>
    /// <param name="id">An id that no other picture of the page has.</param>
    public static string Draw(ReplayPicture replay, ReplayWords words, string id)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(words);
        var body = new List<object>();
        var top = Head(replay, words, body);
        var y = top;
        var before = replay.Lanes.Select(lane => lane.AtStart).ToArray();
        foreach (var row in replay.Rows)
        {
            y = Row(replay, row, before, y, body);
            before = [.. row.After];
        }

        foreach (var gap in replay.NotDone) y = Gap(gap, y, words, body);
        y = Legend(replay, y, body);
        var svg = Svg.Picture(words.Name, Describe(replay, words), Width, y + 8, id);
        svg.Add(body);
        return svg.ToString(SaveOptions.DisableFormatting);
    }

    /// <summary>A clock time from the start of the job: <c>0:05</c>, <c>12:30</c>, <c>1:02:03</c>.</summary>
    /// <param name="seconds">Seconds from the start.</param>
    public static string Clock(decimal seconds)
    {
        var whole = (long)Math.Floor(seconds);
        var (hours, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
        return hours > 0
            ? string.Create(CultureInfo.InvariantCulture, $"{hours}:{minutes:00}:{rest:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{minutes}:{rest:00}");
    }

    private static double Head(ReplayPicture replay, ReplayWords words, List<object> body)
    {
        var longest = replay.Lanes.Select(lane => lane.Fact.Length).DefaultIfEmpty(0).Max();
        var height = Math.Max(30, (longest * SmallSize * CharWidth) + 16);
        for (var lane = 0; lane < replay.Lanes.Count; lane++)
        {
            var x = LaneX(replay, lane) + 4;
            body.Add(Svg.Text(x, height - 6, replay.Lanes[lane].Fact, SmallSize, Svg.Soft).Turned(-90, x, height - 6));
        }

        body.Add(Svg.Text(Width - 2, height - 6, words.Clock, SmallSize, Svg.Soft, "end"));
        body.Add(Svg.Line(0, height, Width, height, Svg.Ink, 2));
        return height;
    }

    private static double Row(ReplayPicture replay, ReplayRow row, int[] before, double y, List<object> body)
    {
        var changes = Enumerable.Range(0, replay.Lanes.Count).Where(lane => before[lane] != row.After[lane]).ToList();
        var space = LaneX(replay, 0) - 8 - TextX;
        var text = Svg.Wrap(row.Text, (int)(space / (TextSize * CharWidth)));
        var says = changes.SelectMany(lane => Svg.Wrap(
            $"{replay.Lanes[lane].Fact}: {replay.Lanes[lane].Values[row.After[lane]]}", (int)(space / (SmallSize * CharWidth * 1.05)))).ToList();
        var height = 16 + ((text.Count + says.Count) * LineHeight) + (row.Faults.Count > 0 ? FaultMark.Size + 8 : 0);
        height = Math.Max(height, 40);
        if (row.Faults.Count > 0) body.Add(Svg.Rect(0, y, Width, height, Svg.DangerTint));
        Lanes(replay, before, row.After, y, height, body);
        body.Add(Svg.Circle(PlaceX, y + 20, 13, row.Faults.Count > 0 ? Svg.Sheet : Svg.Work, row.Faults.Count > 0 ? Svg.Danger : Svg.Work));
        body.Add(Svg.Text(PlaceX, y + 25, row.Place, 14, row.Faults.Count > 0 ? Svg.Danger : "#fff", "middle", "700"));
        var baseline = y + 26;
        foreach (var line in text)
        {
            body.Add(Svg.Text(TextX, baseline, line, TextSize));
            baseline += LineHeight;
        }

        foreach (var line in says)
        {
            body.Add(Svg.Text(TextX, baseline, line, SmallSize, Svg.Work, weight: "600"));
            baseline += LineHeight;
        }

        for (var fault = 0; fault < row.Faults.Count; fault++)
            body.Add(row.Faults[fault].At(TextX + 15 + (fault * (FaultMark.Size + 6)), baseline + 3));
        body.Add(Svg.Text(Width - 2, y + 26, row.Clock, SmallSize, Svg.Ink, "end"));
        body.Add(Svg.Line(0, y + height, Width, y + height, Svg.Rule, 1));
        return y + height;
    }

    private static void Lanes(ReplayPicture replay, int[] before, IReadOnlyList<int> after, double y, double height, List<object> body)
    {
        for (var lane = 0; lane < replay.Lanes.Count; lane++)
        {
            var x = LaneX(replay, lane);
            body.Add(Strip(x, y, 20, before[lane]));
            body.Add(Strip(x, y + 20, height - 20, after[lane]));
            if (before[lane] != after[lane]) body.Add(Svg.Circle(x, y + 20, 7, Svg.Sheet, Svg.Work, 3));
        }
    }

    private static IEnumerable<XElement> Strip(double x, double y, double height, int value)
    {
        if (value == 1)
        {
            yield return Svg.Rect(x - 5, y, 10, height, Svg.Work);
            yield break;
        }

        yield return Svg.Line(x - 4, y, x - 4, y + height, Svg.Work, 2);
        yield return Svg.Line(x + 4, y, x + 4, y + height, Svg.Work, 2);
        if (value > 1) yield return Svg.Line(x, y, x, y + height, Svg.Work, 6).Dashed("3 4");
    }

    private static double Gap(ReplayGap gap, double y, ReplayWords words, List<object> body)
    {
        var text = Svg.Wrap(words.NotDone + " " + gap.Text, (int)((Width - 40 - TextX) / (TextSize * CharWidth)));
        var height = 22 + (text.Count * LineHeight);
        body.Add(Svg.Rect(0, y, Width, height, Svg.DangerTint));
        body.Add(Svg.Circle(PlaceX, y + 22, 13, "none", Svg.Danger).Dashed());
        for (var line = 0; line < text.Count; line++)
            body.Add(Svg.Text(TextX, y + 27 + (line * LineHeight), text[line], TextSize));
        body.Add(gap.Fault.At(Width - 18, y + 22));
        body.Add(Svg.Line(0, y + height, Width, y + height, Svg.Rule, 1));
        return y + height;
    }

    private static double Legend(ReplayPicture replay, double y, List<object> body)
    {
        foreach (var lane in replay.Lanes)
        {
            y += 24;
            body.Add(Svg.Text(0, y, lane.Fact + ":", SmallSize, Svg.Soft));
            var x = 16 + (lane.Fact.Length * SmallSize * 0.58);
            for (var value = 0; value < lane.Values.Count; value++)
            {
                var width = 26 + (lane.Values[value].Length * SmallSize * 0.58);
                if (x + width > Width)
                {
                    x = 24;
                    y += 22;
                }

                body.Add(Strip(x + 6, y - 13, 16, value));
                body.Add(Svg.Text(x + 18, y, lane.Values[value], SmallSize, Svg.Soft));
                x += width + 8;
            }
        }

        return y;
    }

    private static double LaneX(ReplayPicture replay, int lane)
    {
        var count = Math.Max(1, replay.Lanes.Count);
        var pitch = Math.Min(20, 96.0 / count);
        return LanesEnd - (pitch * (count - lane - 0.5));
    }

    private static string Describe(ReplayPicture replay, ReplayWords words)
    {
        var text = new StringBuilder();
        foreach (var lane in replay.Lanes) text.Append(CultureInfo.CurrentCulture, $"{lane.Fact}: {lane.Values[lane.AtStart]}. ");
        var before = replay.Lanes.Select(lane => lane.AtStart).ToArray();
        foreach (var row in replay.Rows)
        {
            text.Append(CultureInfo.CurrentCulture, $"{row.Place}, {row.Clock}: {row.Text}. ");
            for (var lane = 0; lane < replay.Lanes.Count; lane++)
            {
                if (before[lane] == row.After[lane]) continue;
                text.Append(CultureInfo.CurrentCulture, $"{replay.Lanes[lane].Fact}: {replay.Lanes[lane].Values[row.After[lane]]}. ");
            }

            foreach (var fault in row.Faults) text.Append(CultureInfo.CurrentCulture, $"{words.Fault} {fault.Number}. ");
            before = [.. row.After];
        }

        foreach (var gap in replay.NotDone) text.Append(CultureInfo.CurrentCulture, $"{words.NotDone} {gap.Text}. {words.Fault} {gap.Fault.Number}. ");
        return text.ToString().TrimEnd();
    }
}

/// <summary>The words of a replay in the reader's language.</summary>
/// <param name="Name">What the picture is called.</param>
/// <param name="Clock">The heading of the clock's column.</param>
/// <param name="NotDone">What stands before a step that was left out.</param>
/// <param name="Fault">What stands before a fault's number.</param>
public sealed record ReplayWords(string Name, string Clock, string NotDone, string Fault);

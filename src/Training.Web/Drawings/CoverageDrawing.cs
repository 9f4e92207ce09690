using System.Globalization;
using System.Text;
using System.Xml.Linq;
using NodaTime;

namespace Training.Web.Drawings;

/// <summary>How many people hold one competency on each day of a time to come, against how many are needed.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The last day.</param>
/// <param name="Steps">From which day on how many hold it, the first day first.</param>
/// <param name="Need">How many are needed; 0 for no need.</param>
/// <param name="FirstBelow">The first day with fewer than are needed; null for none.</param>
public sealed record CoveragePicture(
    LocalDate From, LocalDate To, IReadOnlyList<(LocalDate From, int People)> Steps, int Need, LocalDate? FirstBelow);

/// <summary>The words of a coverage picture in the reader's language.</summary>
/// <param name="Name">What the picture is called.</param>
/// <param name="Needed">What stands at the line of the need.</param>
/// <param name="Day">How a day is written.</param>
/// <param name="Month">How a month is written where there is little room.</param>
/// <param name="People">How a number of people from a day on is told.</param>
public sealed record CoverageWords(
    string Name, string Needed, Func<LocalDate, string> Day, Func<LocalDate, string> Month, Func<LocalDate, int, string> People);

/// <summary>
/// Draws coverage as a calendar: a step for each day on which the number falls, a dashed line for the need, and a marked
/// day where the one goes below the other. What lies below the need is hatched, so that it is seen without colour.
/// </summary>
public static class CoverageDrawing
{
    private const double Width = 310;
    private const double Left = 38;
    private const double Right = 8;
    private const double Top = 54;
    private const double Plot = 96;
    private const double Height = Top + Plot + 30;
    private const double TextSize = 17;

    /// <summary>Draws it as SVG with a text alternative.</summary>
    /// <param name="picture">The numbers.</param>
    /// <param name="words">The words.</param>
    /// <param name="id">An id that no other picture of the page has.</param>
    public static string Draw(CoveragePicture picture, CoverageWords words, string id)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(words);
        var most = Math.Max(1, Math.Max(picture.Need, picture.Steps.Max(step => step.People)));
        var svg = Svg.Picture(words.Name, Describe(picture, words), Width, Height, id);
        svg.Add(Months(picture, words));
        svg.Add(Counts(most));
        foreach (var (index, step) in picture.Steps.Index())
        {
            var (x, next) = (X(picture, step.From), index + 1 < picture.Steps.Count ? X(picture, picture.Steps[index + 1].From) : Width - Right);
            var y = Y(step.People, most);
            if (step.People > 0) svg.Add(Svg.Rect(x, y, next - x, Y(0, most) - y, Svg.WorkTint));
            if (step.People < picture.Need) svg.Add(Hatch(x, next, Y(picture.Need, most), y));
        }

        svg.Add(Svg.Path(Outline(picture, most), Svg.Work, 3));
        if (picture.Need > 0)
        {
            var y = Y(picture.Need, most);
            svg.Add(Svg.Line(Left, y, Width - Right, y, Svg.Ink, 2).Dashed("7 4"));
            svg.Add(Svg.Text(Width - Right, 14, words.Needed, TextSize, anchor: "end"));
            svg.Add(Svg.Line(Width - Right - Room(words.Needed) - 30, 9, Width - Right - Room(words.Needed) - 6, 9, Svg.Ink, 2).Dashed("7 4"));
        }

        if (picture.FirstBelow is { } day) svg.Add(Mark(picture, words, day));
        return svg.ToString(SaveOptions.DisableFormatting);
    }

    private static IEnumerable<XElement> Months(CoveragePicture picture, CoverageWords words)
    {
        var bottom = Top + Plot;
        for (var month = new LocalDate(picture.From.Year, picture.From.Month, 1).PlusMonths(1); month <= picture.To; month = month.PlusMonths(1))
        {
            var x = X(picture, month);
            var isNamed = month.Month % 3 == 1;
            yield return Svg.Line(x, Top, x, bottom + (isNamed ? 7 : 3), Svg.Rule, 1);
            if (!isNamed) continue;
            var anchor = x > Width - 30 ? "end" : x < Left + 20 ? "start" : "middle";
            yield return Svg.Text(x, bottom + 22, words.Month(month), TextSize, Svg.Soft, anchor);
        }
    }

    private static IEnumerable<XElement> Counts(int most)
    {
        var every = Math.Max(1, (int)Math.Ceiling(most / 4.0));
        for (var count = 0; count <= most; count += every)
        {
            yield return Svg.Line(Left - 4, Y(count, most), Width - Right, Y(count, most), Svg.Rule, count == 0 ? 2 : 1);
            yield return Svg.Text(Left - 8, Y(count, most) + 5, count.ToString(CultureInfo.InvariantCulture), TextSize, Svg.Soft, "end");
        }
    }

    /// <summary>What lacks, as strokes of one slant.</summary>
    private static IEnumerable<XElement> Hatch(double left, double right, double top, double bottom)
    {
        yield return Svg.Rect(left, top, right - left, bottom - top, Svg.DangerTint);
        for (var x = left; x < right + bottom - top; x += 8)
        {
            var (x1, y1) = x <= right ? (x, top) : (right, top + x - right);
            var (x2, y2) = x - (bottom - top) >= left ? (x - (bottom - top), bottom) : (left, top + x - left);
            yield return Svg.Line(x1, y1, x2, y2, Svg.Danger, 1);
        }
    }

    private static IEnumerable<XElement> Mark(CoveragePicture picture, CoverageWords words, LocalDate day)
    {
        var x = X(picture, day);
        yield return Svg.Line(x, Top - 6, x, Top + Plot, Svg.Danger, 2);
        yield return Svg.Path($"M{Svg.N(x - 8)} {Svg.N(Top - 15)}L{Svg.N(x + 8)} {Svg.N(Top - 15)}L{Svg.N(x)} {Svg.N(Top - 2)}Z", Svg.Danger, 1, Svg.Danger);
        var text = words.Day(day);
        var fits = x + 12 + Room(text) < Width - Right;
        yield return Svg.Text(fits ? x + 12 : x - 12, Top - 6, text, TextSize, Svg.Danger, fits ? "start" : "end", "700");
    }

    private static string Outline(CoveragePicture picture, int most)
    {
        var path = new StringBuilder();
        foreach (var (index, step) in picture.Steps.Index())
            path.Append(CultureInfo.InvariantCulture, $"{(index == 0 ? "M" : "H")}{Svg.N(X(picture, step.From))}{(index == 0 ? " " : "V")}{Svg.N(Y(step.People, most))}");
        return path.Append('H').Append(Svg.N(Width - Right)).ToString();
    }

    private static string Describe(CoveragePicture picture, CoverageWords words) =>
        string.Join(' ', picture.Steps.Select(step => words.People(step.From, step.People)).Append(picture.Need > 0 ? $"{words.Needed}." : ""))
            .TrimEnd();

    private static double Room(string text) => text.Length * TextSize * 0.56;

    private static double X(CoveragePicture picture, LocalDate day) =>
        Left + ((Width - Left - Right) * Period.DaysBetween(picture.From, day) / Math.Max(1, Period.DaysBetween(picture.From, picture.To)));

    private static double Y(int people, int most) => Top + (Plot * (most - people) / most);
}

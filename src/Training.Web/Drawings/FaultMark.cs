using System.Globalization;
using System.Xml.Linq;
using Training.Sequencing.Procedures;

namespace Training.Web.Drawings;

/// <summary>
/// The sign of a fault: its number, and how bad it is by shape first and colour second. A diamond is critical,
/// a triangle serious, a square minor.
/// </summary>
/// <param name="Number">Its number in the list of findings, from 1.</param>
/// <param name="Severity">How bad.</param>
public readonly record struct FaultMark(int Number, Severity Severity)
{
    /// <summary>The width and height of the sign, in the picture's units.</summary>
    public const double Size = 30;

    /// <summary>The sign as a small picture of its own, to stand beside a sentence that already says what it means.</summary>
    public string Draw()
    {
        var svg = new XElement(Svg.Picture("", "", Size, Size, "mark"));
        svg.RemoveNodes();
        svg.Attribute("role")!.Remove();
        svg.Attribute("aria-labelledby")!.Remove();
        svg.Add(new XAttribute("aria-hidden", "true"), new XAttribute("width", "32"), new XAttribute("height", "32"));
        svg.Add(At(Size / 2, Size / 2));
        return svg.ToString(SaveOptions.DisableFormatting);
    }

    internal IEnumerable<XElement> At(double cx, double cy)
    {
        var (d, fill) = Severity switch
        {
            Severity.Critical => ($"M{P(cx, cy - 15)}L{P(cx + 15, cy)}L{P(cx, cy + 15)}L{P(cx - 15, cy)}Z", Svg.Danger),
            Severity.Serious => ($"M{P(cx, cy - 15)}L{P(cx + 15, cy + 13)}L{P(cx - 15, cy + 13)}Z", Svg.Warning),
            _ => ($"M{P(cx - 12, cy - 12)}L{P(cx + 12, cy - 12)}L{P(cx + 12, cy + 12)}L{P(cx - 12, cy + 12)}Z", Svg.Caution),
        };
        yield return Svg.Path(d, fill, 1, fill);
        yield return Svg.Text(cx, cy + (Severity == Severity.Serious ? 10 : 5),
            Number.ToString(CultureInfo.InvariantCulture), Number > 9 ? 13 : 14.5, "#fff", "middle", "700");
    }

    private static string P(double x, double y) => Svg.N(x) + " " + Svg.N(y);
}

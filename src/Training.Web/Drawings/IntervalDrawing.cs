using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>A value with the interval that it lies in, on a scale.</summary>
/// <param name="Value">The value.</param>
/// <param name="Low">The lower end of the interval.</param>
/// <param name="High">The upper end.</param>
/// <param name="From">Where the scale begins.</param>
/// <param name="To">Where it ends.</param>
public sealed record IntervalPicture(double Value, double Low, double High, double From, double To);

/// <summary>Draws an interval as a bar with an upright at each end and the value as a diamond in it; the scale has an upright at its ends and at its middle.</summary>
public static class IntervalDrawing
{
    private const double Width = 300;
    private const double Height = 26;
    private const double Edge = 9;
    private const double Middle = Height / 2;

    /// <summary>Draws it as SVG with a text alternative.</summary>
    /// <param name="picture">The numbers.</param>
    /// <param name="name">What the picture is called.</param>
    /// <param name="description">What it shows, in words.</param>
    /// <param name="id">An id that no other picture of the page has.</param>
    public static string Draw(IntervalPicture picture, string name, string description, string id)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var svg = Svg.Picture(name, description, Width, Height, id);
        svg.Add(Svg.Line(Edge, Middle, Width - Edge, Middle, Svg.Rule, 2));
        foreach (var at in new[] { picture.From, (picture.From + picture.To) / 2, picture.To })
            svg.Add(Svg.Line(X(picture, at), Middle - 7, X(picture, at), Middle + 7, Svg.Soft, 1));
        var (low, high, value) = (X(picture, picture.Low), X(picture, picture.High), X(picture, picture.Value));
        svg.Add(Svg.Line(low, Middle, high, Middle, Svg.Work, 5));
        svg.Add(Svg.Line(low, Middle - 8, low, Middle + 8, Svg.Work, 2.5));
        svg.Add(Svg.Line(high, Middle - 8, high, Middle + 8, Svg.Work, 2.5));
        svg.Add(Svg.Path($"M{Svg.N(value - 8)} {Svg.N(Middle)}L{Svg.N(value)} {Svg.N(Middle - 8)}L{Svg.N(value + 8)} {Svg.N(Middle)}L{Svg.N(value)} {Svg.N(Middle + 8)}Z", Svg.Ink, 2, Svg.Sheet));
        return svg.ToString(SaveOptions.DisableFormatting);
    }

    private static double X(IntervalPicture picture, double at) =>
        Edge + ((Width - (2 * Edge)) * (Math.Clamp(at, picture.From, picture.To) - picture.From) / (picture.To - picture.From));
}

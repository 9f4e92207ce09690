using System.Globalization;
using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>
/// The float of a hydrometer in its tube: the thin stem stands out of the liquid, and its scale, which grows downwards,
/// is read where the surface cuts it.
/// </summary>
internal static class FloatDrawing
{
    private const double Width = 280;
    private const double Height = 300;
    private const double Surface = 150;
    private const double LineGap = 11;
    private const double Top = 34;
    private const double Bottom = 286;

    public static XElement Draw(ScalePicture scale, string id)
    {
        var svg = Svg.Picture(scale.Name, scale.Says, Width, Height, id);
        svg.Add(
            Svg.Text(12, 20, scale.Name, 15),
            Svg.Rect(40, Surface, 200, Height - Surface, Svg.WorkTint),
            Svg.Line(40, 30, 40, Height, Svg.Ink, 3),
            Svg.Line(240, 30, 240, Height, Svg.Ink, 3),
            Svg.Rect(104, Top, 96, Bottom - Top, Svg.Sheet, Svg.Ink));
        var lines = (int)((Bottom - Top) / LineGap);
        var nearest = Math.Round(scale.Value / scale.Division);
        for (var line = nearest - lines; line <= nearest + lines; line++)
        {
            var value = line * scale.Division;
            var y = Surface + (double)((value - scale.Value) / scale.Division) * LineGap;
            if (y < Top + 6 || y > Bottom - 6) continue;
            var isNumbered = line % ScalePicture.LinesOfNumber(isFloat: true) == 0;
            svg.Add(Svg.Line(104, y, isNumbered ? 134 : 120, y, Svg.Ink, isNumbered ? 3 : 2));
            if (isNumbered)
                svg.Add(Svg.Text(194, y + 6, value.ToString($"F{scale.Decimals}", CultureInfo.InvariantCulture), 17, anchor: "end"));
        }

        svg.Add(
            Svg.Line(40, Surface, 104, Surface, Svg.Work, 4),
            Svg.Line(200, Surface, 240, Surface, Svg.Work, 4),
            Svg.Path($"M 78 {Svg.N(Surface - 14)} L 100 {Svg.N(Surface)} L 78 {Svg.N(Surface + 14)} Z", Svg.Ink, 1, Svg.Work));
        return svg;
    }
}

using System.Globalization;
using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>A thermometer, read at the end of its column.</summary>
internal static class ThermometerDrawing
{
    private const double Width = 280;
    private const double Height = 300;
    private const double Mark = 140;
    private const double Top = 40;
    private const double Bottom = 250;
    private const double LineGap = 14;

    public static XElement Draw(ScalePicture scale, string id)
    {
        var svg = Svg.Picture(scale.Name, scale.Says, Width, Height, id);
        svg.Add(
            Svg.Text(12, 20, scale.Name, 15),
            Svg.Rect(120, Top - 8, 28, Bottom - Top + 16, Svg.Sheet, Svg.Ink),
            Svg.Rect(127, Mark, 14, Bottom - Mark + 16, Svg.Work),
            Svg.Circle(134, 272, 20, Svg.Work, Svg.Ink));
        var lines = (int)((Bottom - Top) / LineGap);
        var nearest = Math.Round(scale.Value / scale.Division);
        for (var line = nearest - lines; line <= nearest + lines; line++)
        {
            var value = line * scale.Division;
            var y = Mark - (double)((value - scale.Value) / scale.Division) * LineGap;
            if (y < Top || y > Bottom) continue;
            var isNumbered = line % ScalePicture.LinesOfNumber(isFloat: false) == 0;
            svg.Add(Svg.Line(150, y, isNumbered ? 172 : 162, y, Svg.Ink, isNumbered ? 3 : 2));
            if (isNumbered)
                svg.Add(Svg.Text(180, y + 6, value.ToString($"F{scale.Decimals}", CultureInfo.InvariantCulture), 17));
        }

        svg.Add(Svg.Text(236, Mark, scale.Unit, 20, weight: "700"));
        return svg;
    }
}

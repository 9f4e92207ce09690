using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>A meter with its display: with two leads, or with jaws around a cable.</summary>
internal static class MeterDrawing
{
    private const double Width = 280;
    private const double Body = 190;
    private const double LineHeight = 19;
    private const int Letters = 34;

    public static XElement Draw(MeterPicture meter, string id)
    {
        var name = Svg.Wrap(meter.Name, Letters);
        var top = name.Count * LineHeight;
        var svg = Svg.Picture(meter.Name, meter.Says, Width, Body + top, id);
        foreach (var (index, line) in name.Index()) svg.Add(Svg.Text(12, (index + 1) * LineHeight, line, 15));
        if (meter.IsClamp) AddJaws(svg, top);
        else AddLeads(svg, top);
        svg.Add(
            Svg.Rect(20, top + 44, 240, 112, Svg.WorkTint, Svg.Ink),
            Svg.Rect(36, top + 60, 208, 64, Svg.Sheet, Svg.Ink),
            Svg.Text(184, top + 107, meter.Digits, 44, anchor: "end", weight: "700"),
            Svg.Text(192, top + 107, meter.Unit, 22, weight: "700"),
            Svg.Circle(140, top + 140, 9, Svg.Sheet, Svg.Ink),
            Svg.Line(140, top + 140, 146, top + 134, Svg.Ink, 3));
        return svg;
    }

    private static void AddLeads(XElement svg, double top) => svg.Add(
        Svg.Path($"M 200 {Svg.N(top + 156)} C 200 {Svg.N(top + 186)} 160 {Svg.N(top + 170)} 160 {Svg.N(top + 188)}", Svg.Ink, 4),
        Svg.Path($"M 232 {Svg.N(top + 156)} C 232 {Svg.N(top + 182)} 262 {Svg.N(top + 170)} 262 {Svg.N(top + 188)}", Svg.Danger, 4),
        Svg.Circle(200, top + 156, 6, Svg.Ink, Svg.Ink),
        Svg.Circle(232, top + 156, 6, Svg.Danger, Svg.Ink));

    private static void AddJaws(XElement svg, double top) => svg.Add(
        Svg.Path($"M 116 {Svg.N(top + 44)} C 92 {Svg.N(top + 2)} 188 {Svg.N(top + 2)} 164 {Svg.N(top + 44)}", Svg.Ink, 10),
        Svg.Line(140, top + 4, 140, top + 24, Svg.Sheet, 4),
        Svg.Circle(140, top + 30, 7, Svg.Danger, Svg.Ink));
}

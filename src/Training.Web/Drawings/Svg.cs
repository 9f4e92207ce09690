using System.Globalization;
using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>The few shapes that our pictures are made of, in one hand: ink on paper and one working colour.</summary>
internal static class Svg
{
    public const string Ink = "#1c1a15";
    public const string Soft = "#45413a";
    public const string Rule = "#cbc2af";
    public const string Work = "#0a4d5a";
    public const string WorkTint = "#dcebec";
    public const string Sheet = "#fffdf8";
    public const string Danger = "#960b1d";
    public const string DangerTint = "#fbe3e1";
    public const string Warning = "#7d3600";
    public const string Caution = "#5c4a00";

    private static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    /// <summary>A picture with its name and its text alternative, which assistive technology reads in place of it.</summary>
    public static XElement Picture(string name, string description, double width, double height, string id) =>
        new(Space + "svg",
            new XAttribute("viewBox", $"0 0 {N(width)} {N(height)}"),
            new XAttribute("role", "img"),
            // What a picture shows has its left and right by itself, on a page that is read from the right, too.
            new XAttribute("direction", "ltr"),
            new XAttribute("aria-labelledby", $"{id}-name {id}-text"),
            new XAttribute("font-family", "system-ui, 'Noto Sans', 'Noto Sans Devanagari', 'DejaVu Sans', sans-serif"),
            new XElement(Space + "title", new XAttribute("id", id + "-name"), name),
            new XElement(Space + "desc", new XAttribute("id", id + "-text"), description));

    public static XElement Line(double x1, double y1, double x2, double y2, string stroke, double width) =>
        new(Space + "line", A("x1", x1), A("y1", y1), A("x2", x2), A("y2", y2),
            new XAttribute("stroke", stroke), A("stroke-width", width));

    public static XElement Path(string d, string stroke, double width, string fill = "none") =>
        new(Space + "path", new XAttribute("d", d), new XAttribute("fill", fill), new XAttribute("stroke", stroke),
            A("stroke-width", width), new XAttribute("stroke-linejoin", "round"));

    public static XElement Rect(double x, double y, double width, double height, string fill, string? stroke = null) =>
        new(Space + "rect", A("x", x), A("y", y), A("width", width), A("height", height), new XAttribute("fill", fill),
            stroke is null ? null : new XAttribute("stroke", stroke), stroke is null ? null : A("stroke-width", 2));

    public static XElement Circle(double cx, double cy, double r, string fill, string stroke, double width = 2) =>
        new(Space + "circle", A("cx", cx), A("cy", cy), A("r", r), new XAttribute("fill", fill),
            new XAttribute("stroke", stroke), A("stroke-width", width));

    public static XElement Text(double x, double y, string text, double size = 14, string fill = Ink,
        string anchor = "start", string? weight = null) =>
        new(Space + "text", A("x", x), A("y", y), A("font-size", size), new XAttribute("fill", fill),
            // Each text by its own letters: one in Arabic ends at its left, and stays where it stands.
            new XAttribute("unicode-bidi", "plaintext"),
            anchor == "start" ? null : new XAttribute("text-anchor", anchor),
            weight is null ? null : new XAttribute("font-weight", weight), text);

    public static XElement Dashed(this XElement shape, string pattern = "4 4")
    {
        shape.Add(new XAttribute("stroke-dasharray", pattern));
        return shape;
    }

    public static XElement Turned(this XElement shape, double degrees, double x, double y)
    {
        shape.Add(new XAttribute("transform", $"rotate({N(degrees)} {N(x)} {N(y)})"));
        return shape;
    }

    /// <summary>A number in the form that SVG reads, whatever the reader's language.</summary>
    public static string N(double number) => Math.Round(number, 2).ToString(CultureInfo.InvariantCulture);

    /// <summary>Breaks a text into lines of at most so many characters, at spaces; a longer word stands alone.</summary>
    public static IReadOnlyList<string> Wrap(string text, int width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : line + " " + word;
            }
        }

        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    private static XAttribute A(string name, double value) => new(name, N(value));
}

using System.Globalization;
using System.Text;

namespace Training.Web.Drawings;

/// <summary>A QR code as SVG.</summary>
public static class QrDrawing
{
    /// <summary>Draws a text, with its quiet zone.</summary>
    /// <param name="text">What the code says, such as an address.</param>
    /// <param name="name">The text alternative.</param>
    public static string Draw(string text, string name)
    {
        var code = QrCode.Of(text);
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {code.Size} {code.Size}\" role=\"img\" shape-rendering=\"crispEdges\">");
        svg.Append("<title>").Append(System.Net.WebUtility.HtmlEncode(name)).Append("</title>");
        svg.Append(CultureInfo.InvariantCulture, $"<rect width=\"{code.Size}\" height=\"{code.Size}\" fill=\"#fff\"/>");
        foreach (var bar in code.Bars)
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{bar.X}\" y=\"{bar.Y}\" width=\"{bar.Width}\" height=\"1\" fill=\"#000\"/>");
        return svg.Append("</svg>").ToString();
    }
}

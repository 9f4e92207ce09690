using System.Globalization;
using System.Xml.Linq;

namespace Training.Web.Tests.Drawings;

/// <summary>A drawing, read back from its text.</summary>
internal sealed class SvgReading
{
    public static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    private SvgReading(XElement root) => Root = root;

    public XElement Root { get; }

    /// <summary>Reads a drawing; one that is not well-formed is a fault.</summary>
    public static SvgReading Of(string svg) => new(XDocument.Parse(svg).Root!);

    /// <summary>The text alternative.</summary>
    public string Description => Root.Element(Space + "desc")!.Value;

    /// <summary>Every text that is drawn.</summary>
    public IEnumerable<XElement> Texts => Root.Descendants(Space + "text");

    public IEnumerable<XElement> All(string name) => Root.Descendants(Space + name);

    public static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>The width and height of the picture.</summary>
    public (double Width, double Height) Size
    {
        get
        {
            var box = Root.Attribute("viewBox")!.Value.Split(' ').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray();
            return (box[2], box[3]);
        }
    }
}

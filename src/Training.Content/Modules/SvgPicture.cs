using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using Training.Content.Yaml;

namespace Training.Content.Modules;

/// <summary>
/// Checks a picture: well-formed SVG with a title, that runs nothing and fetches nothing. It is shown from our own
/// address, where a script in it would act with the reader's rights.
/// </summary>
internal static partial class SvgPicture
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    // What a drawing is made of. All else (scripts, foreign objects, other people's elements) is refused by its name.
    private static readonly HashSet<string> Elements = new(StringComparer.Ordinal)
    {
        "svg", "title", "desc", "metadata", "defs", "g", "symbol", "use", "style", "path", "rect", "circle", "ellipse", "line",
        "polyline", "polygon", "text", "tspan", "textPath", "marker", "pattern", "clipPath", "mask",
        "linearGradient", "radialGradient", "stop", "filter", "feGaussianBlur", "feOffset", "feMerge", "feMergeNode",
        "feFlood", "feComposite", "feDropShadow", "switch", "view",
    };

    /// <summary>Reports what is wrong with a picture.</summary>
    public static void Check(ContentFile file, ProblemList problems)
    {
        if (!PlainText.IsSound(file, problems)) return;
        if (Load(file.Text, LoadOptions.SetLineInfo, out var fault) is not { } root)
        {
            problems.Error(fault.Place, fault.Sentence);
            return;
        }

        if (root.Name != Svg + "svg")
            problems.Error(PlaceOf(root), "The picture's outermost element must be <svg xmlns=\"http://www.w3.org/2000/svg\">.");
        else if (string.IsNullOrWhiteSpace(root.Element(Svg + "title")?.Value))
            problems.Error(PlaceOf(root), "The picture has no <title>: say in it what the picture shows.");
        foreach (var element in root.DescendantsAndSelf()) CheckElement(element, problems);
        if (root.Document?.Nodes().OfType<XProcessingInstruction>().FirstOrDefault() is { } instruction)
            problems.Error(PlaceOf(instruction), "A processing instruction is not allowed in a picture: remove it.");
    }

    /// <summary>The size of a picture by its viewBox, in whole units, or null.</summary>
    public static (int Width, int Height)? SizeOf(string text) => Load(text, LoadOptions.None, out _) is { } root ? SizeOf(root) : null;

    /// <summary>The size of a picture by its viewBox, in whole units, or null.</summary>
    public static (int Width, int Height)? SizeOf(XElement root)
    {
        var box = root.Attribute("viewBox")?.Value.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        return box is { Length: 4 }
            && double.TryParse(box[2], NumberStyles.Float, CultureInfo.InvariantCulture, out var width)
            && double.TryParse(box[3], NumberStyles.Float, CultureInfo.InvariantCulture, out var height)
            && width is >= 1 and < 100_000 && height is >= 1 and < 100_000
                ? ((int)Math.Round(width), (int)Math.Round(height))
                : null;
    }

    /// <summary>The outermost element of a picture; null, with what is wrong, where the text is no XML that is read here.</summary>
    public static XElement? Load(string text, LoadOptions options, out (Place Place, string Sentence) fault)
    {
        fault = default;
        try
        {
            var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null };
            using var reader = XmlReader.Create(new StringReader(text), settings);
            var depth = 0;
            using var shallow = XmlReader.Create(new StringReader(text), settings);
            while (shallow.Read()) depth = Math.Max(depth, shallow.Depth);
            if (depth <= 64) return XDocument.Load(reader, options).Root;
            fault = (Place.Start, "The picture is nested too deep (over 64 levels).");
        }
        catch (XmlException xml)
        {
            fault = (
                new(Math.Max(1, xml.LineNumber), Math.Max(1, xml.LinePosition)),
                xml.Message.Contains("DTD", StringComparison.Ordinal)
                    ? "A document type is not allowed in a picture: remove the <!DOCTYPE …>."
                    : $"The picture is not well-formed XML: {Printable(PlaceInWords().Replace(xml.Message, ""))}");
        }

        return null;
    }

    // The reader quotes the character that it stumbled over, whatever it is.
    private static string Printable(string message) => string.Concat(message.Select(c => char.IsControl(c) ? '\uFFFD' : c));

    [GeneratedRegex(" Line [0-9]+, position [0-9]+\\.$")]
    private static partial Regex PlaceInWords();

    private static void CheckElement(XElement element, ProblemList problems)
    {
        var name = element.Name.LocalName;
        if (element.Name.Namespace == Svg && !Elements.Contains(name))
            problems.Error(PlaceOf(element), $"<{Fields.Shown(name)}> is not allowed in a picture: it could run or fetch something. Remove it.");
        else if (element.Name.Namespace != Svg && element.Parent is not null)
            problems.Error(PlaceOf(element), $"<{Fields.Shown(name)}> is no part of SVG: remove it.");
        if (name == "style" && IsFetching(element.Value))
            problems.Error(PlaceOf(element), "A style must not fetch anything: remove url(…) and @import.");
        foreach (var attribute in element.Attributes())
        {
            var key = attribute.Name.LocalName;
            if (key.StartsWith("on", StringComparison.OrdinalIgnoreCase))
                problems.Error(PlaceOf(attribute), $"The attribute {Fields.Shown(key)} would run something: remove it.");
            else if (key.Equals("href", StringComparison.OrdinalIgnoreCase) && !attribute.Value.StartsWith('#'))
                problems.Error(PlaceOf(attribute), "A picture must not refer to anything outside itself: only href=\"#id\" is allowed.");
            else if (key.Equals("base", StringComparison.OrdinalIgnoreCase) || (!attribute.IsNamespaceDeclaration && IsFetching(attribute.Value)))
                problems.Error(PlaceOf(attribute), $"The attribute {Fields.Shown(key)} fetches something from outside: only url(#id) is allowed.");
        }
    }

    private static bool IsFetching(string style)
    {
        var text = string.Concat(style.Where(c => !char.IsWhiteSpace(c) && c is not ('"' or '\''))).ToLowerInvariant();
        // A backslash could spell any of the words below in another way (CSS Syntax, section 4.3.7).
        if (text.Contains("@import", StringComparison.Ordinal) || text.Contains('\\') || text.Contains("javascript:", StringComparison.Ordinal)) return true;
        if (text.Contains("image-set(", StringComparison.Ordinal) || text.Contains("image(", StringComparison.Ordinal)) return true;
        for (var at = text.IndexOf("url(", StringComparison.Ordinal); at >= 0; at = text.IndexOf("url(", at + 1, StringComparison.Ordinal))
            if (at + 4 >= text.Length || text[at + 4] != '#') return true;
        return false;
    }

    private static Place PlaceOf(IXmlLineInfo info) =>
        info.HasLineInfo() ? new(info.LineNumber, Math.Max(1, info.LinePosition)) : Place.Start;
}

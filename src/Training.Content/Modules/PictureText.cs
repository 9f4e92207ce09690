using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using Training.Content.Measuring;

namespace Training.Content.Modules;

/// <summary>
/// The words that stand in a picture, and the picture with other words in their place. A label is the whole text of a
/// <c>text</c> or <c>tspan</c> that holds nothing but text. Nothing else of the picture is touched, but for the size of a
/// label whose translation is longer than it.
/// </summary>
public static partial class PictureText
{
    // A picture 720 units wide is shown 340 px wide on a phone: 20 units are 9.4 px, the least that can be read.
    private const double LeastSize = 20;
    private const double UsualWidth = 720;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The labels of a picture that a translation is wanted for, each once, in the order of the picture.</summary>
    /// <param name="svg">The picture.</param>
    public static IReadOnlyList<string> LabelsToTranslate(string svg) =>
        [.. LabelsOf(svg).Where(label => !IsSameEverywhere(label))];

    /// <summary>All labels of a picture, each once, in its order.</summary>
    /// <param name="svg">The picture.</param>
    internal static IReadOnlyList<string> LabelsOf(string svg) =>
        SvgPicture.Load(svg, LoadOptions.None, out _) is { } root ? [.. LabelsIn(root).Select(element => Plain(element.Value)).Distinct()] : [];

    /// <summary>
    /// Whether a label is the same in every language: a text without two letters side by side, such as “3” or “?”, or a
    /// quantity with its unit, such as “30 min”, or a unit.
    /// </summary>
    /// <param name="label">The label.</param>
    public static bool IsSameEverywhere(string label)
    {
        ArgumentNullException.ThrowIfNull(label);
        return !Word().IsMatch(label) || Quantity.IsAll(label);
    }

    /// <summary>The picture with the words of another language in place of its labels; a label that is not among them stays.</summary>
    /// <param name="svg">The picture, as the checker passed it.</param>
    /// <param name="labels">The words.</param>
    /// <returns>
    /// The picture as XML. A translation with more letters than there is room for is drawn smaller in proportion, but no
    /// smaller than 20 units of a picture 720 units wide. There is room for as many letters as the label has, or as its
    /// attribute <c>data-room</c> says.
    /// </returns>
    public static string With(string svg, PictureLabels labels)
    {
        ArgumentNullException.ThrowIfNull(labels);
        if (SvgPicture.Load(svg, LoadOptions.PreserveWhitespace, out _) is not { } root) return svg;
        var least = LeastSize * (SvgPicture.SizeOf(root)?.Width ?? UsualWidth) / UsualWidth;
        foreach (var element in LabelsIn(root).ToArray())
        {
            var label = Plain(element.Value);
            if (!labels.Words.TryGetValue(label, out var words)) continue;
            var (whole, bare) = (element.Value, element.Value.Trim());
            var start = whole.IndexOf(bare, StringComparison.Ordinal);
            if (FittedSize(element, label, words, least) is { } size) element.SetAttributeValue("font-size", size);
            element.Value = whole[..start] + words + whole[(start + bare.Length)..];
        }

        return Written(root);
    }

    /// <summary>A label on one line, with single spaces, as a picture shows it.</summary>
    internal static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static IEnumerable<XElement> LabelsIn(XElement root) => root.Descendants().Where(element =>
        (element.Name == Svg + "text" || element.Name == Svg + "tspan")
        && element.Nodes().All(node => node is XText)
        && !string.IsNullOrWhiteSpace(element.Value));

    private static string? FittedSize(XElement element, string label, string words, double least)
    {
        var room = int.TryParse(element.Attribute("data-room")?.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var said) ? said : Letters(label);
        var needed = Letters(words);
        var set = element.AncestorsAndSelf().Select(part => part.Attribute("font-size")).FirstOrDefault(size => size is not null);
        if (needed <= room || set is null || !double.TryParse(Unit().Replace(set.Value, ""), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var size)) return null;
        // What was drawn smaller than that from the first is left as it is.
        var fitted = Math.Max(Math.Min(size, least), Math.Floor(size * room / needed * 10) / 10);
        return fitted.ToString("0.#", CultureInfo.InvariantCulture);
    }

    // Signs above and below a letter take no room beside it, and a vowel sign that stands beside one takes half a letter's.
    private static double Letters(string text) => text.EnumerateRunes().Sum(rune => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format => 0,
        UnicodeCategory.SpacingCombiningMark => 0.5,
        _ => 1,
    });

    private static string Written(XElement root)
    {
        var settings = new XmlWriterSettings { OmitXmlDeclaration = true, NewLineHandling = NewLineHandling.Entitize };
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var writer = XmlWriter.Create(text, settings)) root.Document!.Save(writer);
        return text.ToString();
    }

    [GeneratedRegex(@"\p{L}\p{M}*\p{L}", RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex(@"\s*px\s*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Unit();
}

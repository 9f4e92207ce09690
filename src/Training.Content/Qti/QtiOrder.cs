using System.Text;
using System.Xml;
using System.Xml.Linq;
using Training.Sequencing;

namespace Training.Content.Qti;

/// <summary>What an order question of QTI 3.0 says: things to do, and one order of them that is right.</summary>
/// <param name="Name">Its identifier.</param>
/// <param name="Title">Its title.</param>
/// <param name="Situation">What is told before the question, paragraph by paragraph.</param>
/// <param name="Right">What is to be done, in the order that the question names.</param>
/// <param name="Left">What the question offers and does not name in its order.</param>
public sealed record QtiOrder(
    string Name, string Title, IReadOnlyList<string> Situation, IReadOnlyList<QtiChoice> Right, IReadOnlyList<QtiChoice> Left)
{
    /// <summary>The largest file that is read, in bytes: 256 KiB.</summary>
    public const int LargestSize = 256 * 1024;

    private const int MostChoices = 200;
    private const int LongestText = 500;
    private const int DeepestLevel = 40;

    // Blocks of HTML that a body may have: each that holds no other is a paragraph of the situation.
    private static readonly HashSet<string> Blocks =
        ["p", "div", "li", "blockquote", "pre", "h1", "h2", "h3", "h4", "h5", "h6", "td", "th", "dt", "dd", "figcaption", "caption"];

    // What is told after an answer, or to whoever marks it: an item may have it in its body, and it is no part of the situation.
    private static readonly HashSet<string> ToldOtherwise = ["qti-feedback-block", "qti-feedback-inline", "qti-rubric-block"];

    /// <summary>
    /// Reads an item, or refuses it with a sentence. Nothing in it is run or fetched: no document type, no entities but
    /// those of XML itself, nothing from outside; how it is scored is not looked at.
    /// </summary>
    /// <param name="bytes">The file.</param>
    public static Outcome<QtiOrder, Refusal> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > LargestSize) return new Refusal("The file is larger than 256 KiB: a question of order is never so large.");
        try
        {
            return Load(bytes) is { } root ? Of(root) : new Refusal("The file is nested too deep for a question of order.");
        }
        catch (XmlException)
        {
            return new Refusal("This is not a sound XML file, or it has a document type, which is not read.");
        }
    }

    private static XElement? Load(ReadOnlyMemory<byte> bytes)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = LargestSize,
            MaxCharactersFromEntities = 1,
            IgnoreComments = true,
            IgnoreProcessingInstructions = true,
        };
        using (var looked = XmlReader.Create(new MemoryStream(bytes.ToArray()), settings))
            while (looked.Read())
                if (looked.Depth > DeepestLevel) return null;
        using var reader = XmlReader.Create(new MemoryStream(bytes.ToArray()), settings);
        return XDocument.Load(reader).Root;
    }

    private static Outcome<QtiOrder, Refusal> Of(XElement root)
    {
        XNamespace qti = QtiOrderItem.Namespace;
        if (root.Name != qti + "qti-assessment-item") return new Refusal("This is no item of QTI 3.0.");
        XElement[] asked = [.. root.Descendants().Where(part => part.Name.Namespace == qti && part.Name.LocalName.EndsWith("-interaction", StringComparison.Ordinal))];
        if (asked is not [{ Name.LocalName: "qti-order-interaction" } interaction])
            return new Refusal("Only an item that asks for one order and nothing else can be brought in.");
        var declared = root.Elements(qti + "qti-response-declaration")
            .FirstOrDefault(one => (string?)one.Attribute("identifier") == (string?)interaction.Attribute("response-identifier"));
        if (declared is null || (string?)declared.Attribute("cardinality") != "ordered")
            return new Refusal("The item does not say which order is right.");
        var choices = Choices(interaction, qti);
        if (!choices.IsOk) return choices.Fault;
        string[] order = [.. (declared.Element(qti + "qti-correct-response")?.Elements(qti + "qti-value") ?? []).Select(value => value.Value.Trim())];
        if (order.Length == 0) return new Refusal("The item does not say which order is right.");
        if (order.Distinct(StringComparer.Ordinal).Count() != order.Length || order.Any(name => !choices.Value.ContainsKey(name)))
            return new Refusal("The right order of the item names something twice, or something that it does not offer.");
        var title = Line((string?)root.Attribute("title"));
        return new QtiOrder(
            Line((string?)root.Attribute("identifier")),
            title.Length > 0 ? title : Prompt(interaction, qti),
            [.. Told(root, interaction)],
            [.. order.Select(name => choices.Value[name])],
            [.. choices.Value.Values.Where(choice => !order.Contains(choice.Name, StringComparer.Ordinal))]);
    }

    private static Outcome<Dictionary<string, QtiChoice>, Refusal> Choices(XElement interaction, XNamespace qti)
    {
        Dictionary<string, QtiChoice> choices = new(StringComparer.Ordinal);
        foreach (var choice in interaction.Elements(qti + "qti-simple-choice"))
        {
            if (choice.Descendants().Any(part => part.Name.Namespace != qti))
                return new Refusal("Something that the item offers has a formula, or something else that is no text: that cannot be brought in.");
            var (name, text) = (((string?)choice.Attribute("identifier") ?? "").Trim(), Words(choice));
            if (text.Length == 0) return new Refusal("Something that the item offers has no words: a picture alone cannot be brought in.");
            if (text.Length > LongestText) return new Refusal("Something that the item offers has more than 500 letters: a step is told in a few words.");
            if (name.Length == 0 || !choices.TryAdd(name, new(name, text))) return new Refusal("Two things that the item offers have one name, or one has none.");
            if (choices.Count > MostChoices) return new Refusal("The item offers more than 200 things.");
        }

        return choices;
    }

    private static string Prompt(XElement interaction, XNamespace qti) => interaction.Element(qti + "qti-prompt") is { } prompt ? Words(prompt) : "";

    /// <summary>What the body tells before it asks, without what is told after an answer.</summary>
    private static IEnumerable<string> Told(XElement root, XElement interaction)
    {
        XNamespace qti = QtiOrderItem.Namespace;
        var told = root.Elements(qti + "qti-item-body").Elements().SelectMany(part => part.DescendantsAndSelf())
            .Where(part => part.Name.Namespace == qti && Blocks.Contains(part.Name.LocalName)
                && !part.AncestorsAndSelf().Any(outer => outer == interaction || ToldOtherwise.Contains(outer.Name.LocalName))).ToList();
        var holders = told.SelectMany(part => part.Ancestors()).ToHashSet();
        return told.Where(part => !holders.Contains(part)).Select(Words).Where(text => text.Length > 0);
    }

    /// <summary>The text of an element on one line.</summary>
    private static string Words(XElement element)
    {
        var text = new StringBuilder();
        Add(element);
        return Line(text.ToString());

        // A file that is nested deep has been refused before.
        void Add(XElement part)
        {
            foreach (var node in part.Nodes())
            {
                if (node is XText words) text.Append(words.Value);
                else if (node is XElement { Name.LocalName: "br" }) text.Append(' ');
                else if (node is XElement inner && !ToldOtherwise.Contains(inner.Name.LocalName) && !inner.Name.LocalName.EndsWith("-interaction", StringComparison.Ordinal)) Add(inner);
            }
        }
    }

    /// <summary>A text on one line, without control characters, cut where nobody reads on.</summary>
    private static string Line(string? text)
    {
        var line = string.Join(' ', string.Concat((text ?? "").Select(c => char.IsControl(c) ? ' ' : c)).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 2_000 ? line : line[..(char.IsHighSurrogate(line[1_999]) ? 1_999 : 2_000)];
    }
}

/// <summary>Something that a question of order offers.</summary>
/// <param name="Name">Its identifier.</param>
/// <param name="Text">Its words.</param>
public sealed record QtiChoice(string Name, string Text);

using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Training.Content.Yaml;

/// <summary>
/// Reads a YAML text of one document into a tree with places. Anchors, aliases and tags are refused, and so are texts
/// that are deep or have very many parts: content needs none of them, and they are how a small file becomes a huge one.
/// </summary>
internal static class YamlTree
{
    private const int DeepestLevel = 32;
    private const int MostNodes = 50_000;

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text; its lines are counted from 1.</param>
    /// <param name="problems">Where its problems go.</param>
    /// <returns>The root; null where the text is no YAML, with the problem reported.</returns>
    public static YamlNode? Read(string text, ProblemList problems)
    {
        var reading = new Reading(new Parser(new StringReader(text)));
        try
        {
            return reading.Document();
        }
        catch (NotReadException refusal)
        {
            problems.Error(refusal.Place, refusal.Message);
        }
        catch (YamlException fault)
        {
            var place = PlaceOf(fault.End.Line > 0 ? fault.End : fault.Start);
            if (fault.Message.Contains("tab", StringComparison.Ordinal)) place = FirstTab(text, place);
            problems.Error(place, $"This is not YAML: {InOurWords(fault.Message)}");
        }
        catch (Exception fault) when (fault is InvalidOperationException or ArgumentException or FormatException or OverflowException)
        {
            // The parser answers some broken texts (an unclosed bracket, say) with exceptions that carry no place.
            problems.Error(reading.Reached, "This is not YAML from here on: look for a bracket or a quote that is not closed.");
        }

        return null;
    }

    private static string InOurWords(string message) => message switch
    {
        _ when message.Contains("invalid mapping", StringComparison.Ordinal)
            || message.Contains("Mapping values are not allowed", StringComparison.Ordinal) =>
            "a colon stands where none can; put the text in quotes.",
        _ when message.Contains("tab", StringComparison.Ordinal) => "a tab indents the line; use spaces.",
        _ when message.Contains("end of stream", StringComparison.Ordinal) => "a quote or a bracket is opened and not closed.",
        _ when message.Contains("did not find expected key", StringComparison.Ordinal) =>
            "the line is no \"key: value\" at the depth of the lines around it.",
        _ when message.Contains("indentation", StringComparison.Ordinal) => "the line is not indented like its neighbours.",
        _ => message.TrimEnd('.') + ".",
    };

    // The parser tells the start of the part that the tab stands in, not the tab.
    private static Place FirstTab(string text, Place from)
    {
        var lines = text.Split('\n');
        for (var i = from.Line - 1; i < lines.Length; i++)
        {
            var indent = lines[i].AsSpan()[..(lines[i].Length - lines[i].TrimStart().Length)];
            if (indent.IndexOf('\t') is var tab and >= 0) return new(i + 1, tab + 1);
        }

        return from;
    }

    private static Place PlaceOf(Mark mark) => new((int)mark.Line, (int)mark.Column);

    /// <summary>Why a text is not read, and where.</summary>
    private sealed class NotReadException(Place place, string message) : Exception(message)
    {
        public Place Place => place;
    }

    private sealed class Reading(Parser parser)
    {
        private int nodes;

        public Place Reached { get; private set; } = Place.Start;

        public YamlNode Document()
        {
            Next();
            if (Next() is StreamEnd) throw new NotReadException(Place.Start, "The file is empty.");
            Next();
            var root = Node(1);
            Next();
            return Next() is StreamEnd
                ? root
                : throw new NotReadException(Reached, "A second document begins here: a file holds just one, remove the \"---\" line.");
        }

        private ParsingEvent Next()
        {
            if (!parser.MoveNext()) throw new NotReadException(Reached, "The file ends too early.");
            Reached = PlaceOf(parser.Current!.Start);
            return parser.Current;
        }

        private YamlNode Node(int level)
        {
            var place = Reached;
            if (++nodes > MostNodes) throw new NotReadException(place, "The file has too many parts (over 50,000): split it.");
            if (level > DeepestLevel) throw new NotReadException(place, "This is nested too deep (over 32 levels).");
            if (parser.Current is AnchorAlias)
                throw new NotReadException(place, "An alias (*name) is not read: write the value out.");
            if (parser.Current is NodeEvent { Anchor.IsEmpty: false })
                throw new NotReadException(place, "An anchor (&name) is not read: remove it.");
            if (parser.Current is NodeEvent { Tag.IsEmpty: false })
                throw new NotReadException(place, "A tag (!name) is not read: remove it, or put the text in quotes.");
            return parser.Current switch
            {
                Scalar scalar => new YamlText(place, scalar.Value, scalar.Style != ScalarStyle.Plain),
                SequenceStart => List(place, level),
                MappingStart => Map(place, level),
                _ => throw new NotReadException(place, "This is not YAML that is read here."),
            };
        }

        private YamlList List(Place place, int level)
        {
            List<YamlNode> items = [];
            while (Next() is not SequenceEnd) items.Add(Node(level + 1));
            return new(place, items);
        }

        private YamlMap Map(Place place, int level)
        {
            List<YamlField> fields = [];
            while (Next() is not MappingEnd)
            {
                var keyPlace = Reached;
                if (Node(level + 1) is not YamlText key)
                    throw new NotReadException(keyPlace, "A key must be a plain word; put a text that begins with a bracket in quotes.");
                Next();
                fields.Add(new(key, Node(level + 1)));
            }

            return new(place, fields);
        }
    }
}

using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Training.Content.Writing;

/// <summary>A part of a YAML text with the span of characters that it takes.</summary>
/// <param name="Start">Where it begins.</param>
/// <param name="End">Behind its last character that is not blank.</param>
internal abstract record SpannedNode(int Start, int End);

internal sealed record SpannedText(int Start, int End, string Text) : SpannedNode(Start, End);

internal sealed record SpannedList(int Start, int End, bool IsFlow, IReadOnlyList<SpannedNode> Items) : SpannedNode(Start, End);

internal sealed record SpannedMap(int Start, int End, bool IsFlow, IReadOnlyList<SpannedField> Fields) : SpannedNode(Start, End)
{
    public SpannedField? Find(string key) => Fields.FirstOrDefault(field => field.Key.Text == key);
}

internal sealed record SpannedField(SpannedText Key, SpannedNode Value)
{
    public int End => Math.Max(Key.End, Value.End);
}

/// <summary>Reads a YAML text of one document into spans, for edits that leave everything else as it stands.</summary>
internal static class YamlSpans
{
    /// <summary>The root; null where the text is no YAML, or not a document of keys with values.</summary>
    public static SpannedMap? Read(string text)
    {
        try
        {
            var parser = new Parser(new StringReader(text));
            while (parser.MoveNext())
                if (parser.Current is MappingStart) return Node(parser, text) as SpannedMap;
            return null;
        }
        catch (Exception fault) when (fault is YamlException or InvalidOperationException or ArgumentException or FormatException or OverflowException)
        {
            // What the parser makes of a broken text; the check of the draft says what is wrong with it.
            return null;
        }
    }

    private static SpannedNode Node(Parser parser, string text)
    {
        var start = (int)parser.Current!.Start.Index;
        switch (parser.Current)
        {
            case Scalar scalar:
                return new SpannedText(start, Trimmed(text, start, (int)scalar.End.Index), scalar.Value);
            case SequenceStart sequence:
                List<SpannedNode> items = [];
                while (parser.MoveNext() && parser.Current is not SequenceEnd) items.Add(Node(parser, text));
                var isFlowList = sequence.Style == SequenceStyle.Flow;
                return new SpannedList(start, isFlowList ? Closed(parser) : items.Select(item => item.End).DefaultIfEmpty(start).Max(), isFlowList, items);
            case MappingStart mapping:
                List<SpannedField> fields = [];
                while (parser.MoveNext() && parser.Current is not MappingEnd)
                {
                    if (Node(parser, text) is not SpannedText key) throw new InvalidOperationException("A key is no plain word.");
                    parser.MoveNext();
                    fields.Add(new(key, Node(parser, text)));
                }

                var isFlowMap = mapping.Style == MappingStyle.Flow;
                return new SpannedMap(start, isFlowMap ? Closed(parser) : fields.Select(field => field.End).DefaultIfEmpty(start).Max(), isFlowMap, fields);
            default:
                throw new InvalidOperationException("Anchors and aliases are not read.");
        }
    }

    // The parser marks the end of a part in brackets where its closing bracket stands.
    private static int Closed(Parser parser) => (int)parser.Current!.Start.Index + 1;

    private static int Trimmed(string text, int start, int end)
    {
        while (end > start && char.IsWhiteSpace(text[end - 1])) end--;
        return end;
    }
}

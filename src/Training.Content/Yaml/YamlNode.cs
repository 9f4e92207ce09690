namespace Training.Content.Yaml;

/// <summary>Where something stands in a file; line and column from 1.</summary>
internal readonly record struct Place(int Line, int Column)
{
    public static Place Start { get; } = new(1, 1);
}

/// <summary>A piece of a YAML text with the place where it begins.</summary>
internal abstract record YamlNode(Place Place)
{
    /// <summary>What it is, for a sentence: "a list".</summary>
    public abstract string Kind { get; }
}

/// <summary>A scalar. Its text is kept as written: <c>on</c> and <c>5</c> are texts until somebody asks for more.</summary>
internal sealed record YamlText(Place Place, string Text, bool IsQuoted) : YamlNode(Place)
{
    /// <summary>Whether nothing was written, or YAML's words for nothing.</summary>
    public bool IsEmpty => IsQuoted ? string.IsNullOrWhiteSpace(Text) : Text is "" or "~" or "null" or "Null" or "NULL";

    public override string Kind => "a text";
}

internal sealed record YamlList(Place Place, IReadOnlyList<YamlNode> Items) : YamlNode(Place)
{
    public override string Kind => "a list";
}

internal sealed record YamlMap(Place Place, IReadOnlyList<YamlField> Fields) : YamlNode(Place)
{
    public override string Kind => "keys with values";
}

internal sealed record YamlField(YamlText Key, YamlNode Value);

using Markdig.Extensions.CustomContainers;
using Training.Content.Yaml;

namespace Training.Content.Rendering;

/// <summary>The blocks that lessons have besides Markdown's own; written as the members' names in lower case with hyphens.</summary>
internal enum OwnBlock
{
    Danger,
    Warning,
    Caution,
    Notice,
    LinePlan,
    TwoLists,
    Reading,
    Check,
}

internal static class OwnBlocks
{
    /// <summary>Which block a container is, or null where its name is none of ours.</summary>
    public static OwnBlock? Of(CustomContainer container) =>
        container.Info is { } name && Codes<OwnBlock>.TryParse(name, out var block) ? block : null;

    /// <summary>The words behind the block's name.</summary>
    public static string[] Arguments(CustomContainer container) =>
        (container.Arguments ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Whether the block is drawn from a procedure, rather than written out.</summary>
    public static bool IsDrawn(OwnBlock block) => block is OwnBlock.LinePlan or OwnBlock.TwoLists;
}

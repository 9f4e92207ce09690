using Training.Content.Glossary;
using Training.Content.Modules;

namespace Training.Content.Rendering;

/// <summary>Where a link or a picture of a text leads. What is not named here leads nowhere, and is shown as plain text.</summary>
internal abstract record LinkTarget
{
    private LinkTarget()
    {
    }

    /// <summary>Another site, or a letter to somebody.</summary>
    public sealed record Outside(string Address) : LinkTarget;

    /// <summary>A heading of the same lesson.</summary>
    public sealed record Fragment(string Id) : LinkTarget;

    /// <summary>A lesson, or a heading in it.</summary>
    public sealed record LessonOf(ModuleId Module, string? Heading) : LinkTarget;

    /// <summary>A picture, by its path below the module's folder.</summary>
    public sealed record Picture(ModuleId Module, string Path) : LinkTarget;

    /// <summary>A word of the trade.</summary>
    public sealed record GlossaryTerm(TermId Id) : LinkTarget;

    /// <summary>Nowhere that is allowed.</summary>
    public sealed record Nowhere(string Why) : LinkTarget;

    /// <summary>Reads the address of a link in a text.</summary>
    /// <param name="address">The address as Markdown gives it, character references resolved.</param>
    /// <param name="home">The module whose folder relative paths start from; null where none are allowed.</param>
    public static LinkTarget Of(string? address, ModuleId? home)
    {
        if (string.IsNullOrEmpty(address)) return new Nowhere("The link has no address: write one, or remove the link.");
        if (address.Any(c => char.IsControl(c) || char.IsWhiteSpace(c) || c == '\\'))
            return new Nowhere("The link's address has a space, a backslash or a control character in it: write it without.");
        if (address[0] == '#') return new Fragment(address[1..]);
        if (SchemeOf(address) is { } scheme)
        {
            if (scheme == "glossary" && home is not null) return new GlossaryTerm(new(address["glossary:".Length..]));
            return scheme is "http" or "https" or "mailto" && Uri.TryCreate(address, UriKind.Absolute, out _)
                ? new Outside(address)
                : new Nowhere("A link may lead to an http, https or mailto address, a lesson, a picture or a #heading; this is none.");
        }

        if (address[0] == '/') return new Nowhere("A link within the content starts from this file's folder, such as ../03-batteries/lesson.md, not from \"/\".");
        if (home is not { } module) return new Nowhere("A situation has no links to other files: remove the link.");
        var mark = address.IndexOf('#', StringComparison.Ordinal);
        var (path, heading) = mark < 0 ? (address, null) : (address[..mark], address[(mark + 1)..]);
        return Resolve(["modules", module.Value], path) switch
        {
            ["modules", var id] => new LessonOf(new(id), heading),
            ["modules", var id, var lesson] when lesson.StartsWith("lesson.", StringComparison.Ordinal) => new LessonOf(new(id), heading),
            ["modules", var id, "pictures", var name] when heading is null => new Picture(new(id), $"pictures/{name}"),
            _ => new Nowhere("The link leads to no lesson and no picture: mend the path, such as ../03-batteries/lesson.md."),
        };
    }

    // RFC 3986, section 3.1: a scheme ends at the first colon that no "/", "?" or "#" stands before.
    private static string? SchemeOf(string address)
    {
        var end = address.AsSpan().IndexOfAny(":/?#");
        return end >= 0 && address[end] == ':' ? address[..end].ToLowerInvariant() : null;
    }

    private static string[] Resolve(string[] home, string path)
    {
        List<string> parts = [.. home];
        foreach (var part in path.Split('/'))
        {
            if (part is "" or ".") continue;
            if (part != "..") parts.Add(part);
            else if (parts.Count > 0) parts.RemoveAt(parts.Count - 1);
            else return [];
        }

        return [.. parts];
    }
}

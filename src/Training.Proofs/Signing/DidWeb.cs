using System.Globalization;

namespace Training.Proofs.Signing;

/// <summary>
/// An identifier of the method did:web: a host name, perhaps a port, perhaps a path. Whoever holds that place on the
/// web says there, in a document, which keys are theirs. Source: the did:web method specification of the W3C
/// Credentials Community Group.
/// </summary>
public sealed record DidWeb
{
    private const string Scheme = "did:web:";

    private DidWeb(string host, int? port, IReadOnlyList<string> path) => (Host, Port, Path) = (host, port, path);

    /// <summary>The host's name in small letters; never an IP address.</summary>
    public string Host { get; }

    /// <summary>The port, where it is not 443.</summary>
    public int? Port { get; }

    /// <summary>The parts of the path; often none.</summary>
    public IReadOnlyList<string> Path { get; }

    /// <summary>Where the document with the keys stands: always https.</summary>
    public Uri DocumentUrl =>
        new($"https://{Host}{(Port is { } port ? ":" + Text(port) : "")}/"
            + (Path.Count == 0 ? ".well-known" : string.Join('/', Path)) + "/did.json");

    /// <summary>Names a place on the web.</summary>
    /// <param name="host">A host name in small letters.</param>
    /// <param name="port">The port, or null for 443.</param>
    /// <param name="path">The parts of the path: letters, digits, dot, hyphen, underscore.</param>
    public static Outcome<DidWeb> For(string host, int? port = null, params IReadOnlyList<string> path)
    {
        ArgumentNullException.ThrowIfNull(host);
        ArgumentNullException.ThrowIfNull(path);
        if (!IsHostName(host))
            return new Refused($"\"{host}\" is not a host name in small letters; did:web takes no IP address.");
        if (port is < 1 or > 65535)
            return new Refused($"{port} is not a port.");
        foreach (string part in path)
        {
            if (!IsPathPart(part))
                return new Refused($"\"{part}\" cannot stand in the path of a did:web identifier.");
        }
        return new DidWeb(host, port == 443 ? null : port, [.. path]);
    }

    /// <summary>Reads <c>did:web:host%3Aport:path:parts</c>.</summary>
    public static Outcome<DidWeb> Parse(string? text)
    {
        if (text is null || text.Length > 512 || !text.StartsWith(Scheme, StringComparison.Ordinal))
            return new Refused("The identifier does not begin with did:web:.");
        string[] parts = text[Scheme.Length..].Split(':');
        string[] place = parts[0].Split("%3A");
        int? port = null;
        if (place.Length == 2)
        {
            if (!int.TryParse(place[1], NumberStyles.None, CultureInfo.InvariantCulture, out int number))
                return new Refused($"\"{place[1]}\" is not a port.");
            port = number;
        }
        else if (place.Length > 2)
        {
            return new Refused("The identifier names more than one port.");
        }
        Outcome<DidWeb> read = For(place[0], port, parts[1..]);
        return read.IsOk && read.Value.ToString() != text
            ? new Refused($"The identifier is written {read.Value}.")
            : read;
    }

    /// <inheritdoc/>
    public bool Equals(DidWeb? other) => other is not null && ToString() == other.ToString();

    /// <inheritdoc/>
    public override int GetHashCode() => ToString().GetHashCode(StringComparison.Ordinal);

    /// <summary>The identifier.</summary>
    public override string ToString() =>
        Scheme + Host + (Port is { } port ? "%3A" + Text(port) : "") + string.Concat(Path.Select(part => ":" + part));

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static bool IsHostName(string host)
    {
        string[] labels = host.Split('.');
        // A host whose last label is a number is an IPv4 address to every web client (WHATWG URL, section 3.5).
        return host.Length <= 253
            && labels.All(label => label is { Length: > 0 and <= 63 } && label[0] != '-' && label[^1] != '-'
                && label.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-'))
            && !labels[^1].All(char.IsAsciiDigit)
            && !(labels[^1].StartsWith("0x", StringComparison.Ordinal) && labels[^1][2..].All(char.IsAsciiHexDigit));
    }

    private static bool IsPathPart(string part) =>
        part is { Length: > 0 and <= 128 } && part != "." && part != ".."
        && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_');
}

using System.Collections.Frozen;

namespace Training.Content.Yaml;

/// <summary>The members of an enumeration as the files write them: lower case with hyphens, <c>first-fault</c>.</summary>
internal static class Codes<T>
    where T : struct, Enum
{
    private static readonly FrozenDictionary<T, string> ByMember = Enum.GetValues<T>().ToFrozenDictionary(member => member, Hyphenated);

    private static readonly FrozenDictionary<string, T> ByCode =
        ByMember.ToFrozenDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);

    /// <summary>All codes in the order of the members, for a sentence.</summary>
    public static string All { get; } = string.Join(", ", Enum.GetValues<T>().Select(Of));

    public static string Of(T member) => ByMember[member];

    public static bool TryParse(string code, out T member) => ByCode.TryGetValue(code, out member);

    private static string Hyphenated(T member) => string.Concat(member.ToString().Select((letter, i) =>
        char.IsAsciiLetterUpper(letter) ? (i == 0 ? "" : "-") + char.ToLowerInvariant(letter) : letter.ToString()));
}

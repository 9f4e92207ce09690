namespace Training.Web.Features.Shared;

/// <summary>Two texts side by side; the lines that only one of them has are marked.</summary>
/// <param name="OneName">What the first is.</param>
/// <param name="One">The first.</param>
/// <param name="OtherName">What the second is.</param>
/// <param name="Other">The second.</param>
public sealed record TwoTexts(string OneName, string One, string OtherName, string Other)
{
    /// <summary>The lines of the first, each with whether the second lacks it.</summary>
    public IEnumerable<(string Line, bool IsAlone)> OneLines => Marked(One, Other);

    /// <summary>The lines of the second, each with whether the first lacks it.</summary>
    public IEnumerable<(string Line, bool IsAlone)> OtherLines => Marked(Other, One);

    // A line that stands elsewhere in the other text is no difference of words; one that stands there less often is.
    private static List<(string Line, bool IsAlone)> Marked(string text, string other)
    {
        var left = other.Split('\n').CountBy(line => line).ToDictionary(count => count.Key, count => count.Value);
        return [.. text.Split('\n').Select(line =>
        {
            var count = left.GetValueOrDefault(line);
            left[line] = count - 1;
            return (line, count < 1 && !string.IsNullOrWhiteSpace(line));
        })];
    }
}

using System.Globalization;
using Training.Sequencing.Answers;

namespace Training.Web.Tests.House;

/// <summary>Answers as a form posts them.</summary>
internal static class Answers
{
    /// <summary>The fields of an order: the ids and, side by side, the times.</summary>
    public static IEnumerable<(string Name, string Value)> Fields(IReadOnlyList<Entry> entries) => entries.SelectMany(entry => new[]
    {
        ("step", entry.Step.Value),
        ("seconds", entry.Stated?.Seconds.ToString(CultureInfo.InvariantCulture) ?? ""),
    });
}

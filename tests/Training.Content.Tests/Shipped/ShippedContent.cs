using System.Globalization;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Shipped;

/// <summary>The modules, procedures and scenarios that the project ships.</summary>
internal static class ShippedContent
{
    public static IReadOnlyList<ContentFile> Files { get; } = ContentFolder.Read(Path.Combine(AppContext.BaseDirectory, "content"));

    public static ContentReading Reading { get; } = ContentReader.Read(Files);

    public static ContentLibrary Library => Reading.Library!;

    /// <summary>Grades an order of step ids, parted by spaces; a wait is written with its seconds, <c>wait-empty:90</c>.</summary>
    public static Verdict Grade(string procedure, string? variant, string order) =>
        GraderOf(procedure, variant).Grade(new Answer([.. order.Split(' ').Select(EntryOf)])).Value;

    /// <summary>
    /// Asserts that an order is right and that the same order with a habit in the place of what is right is found out by
    /// just these rules, steps and decoys.
    /// </summary>
    public static Verdict AssertNamed(
        string procedure, string variant, string order, string right, string habit, string subjects)
    {
        Assert.True(Grade(procedure, variant, order).Accepted);
        Assert.Contains(right, order, StringComparison.Ordinal);
        var verdict = Grade(procedure, variant, order.Replace(right, habit, StringComparison.Ordinal));
        Assert.Equal(
            subjects.Split(' ').Order(), verdict.Findings.Select(finding => finding.Subject).Distinct().Order());
        return verdict;
    }

    private static Grader GraderOf(string procedure, string? variant) => Grader.For(
        Library.FindProcedure(new(procedure))!.Procedure, variant is null ? null : new VariantId(variant)).Value;

    private static Entry EntryOf(string word) => word.Split(':') is [var id, var seconds]
        ? new(new StepId(id)) { Stated = Duration.FromSeconds(decimal.Parse(seconds, CultureInfo.InvariantCulture)) }
        : new(new StepId(word));
}

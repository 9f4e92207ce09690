using System.Globalization;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Content.Tests.Shipped;

/// <summary>The modules, procedures and scenarios that the project ships.</summary>
internal static class ShippedContent
{
    public static ContentReading Reading { get; } =
        ContentReader.Read(ContentFolder.Read(Path.Combine(AppContext.BaseDirectory, "content")));

    public static ContentLibrary Library => Reading.Library!;

    /// <summary>Grades an order of step ids, parted by spaces; a wait is written with its seconds, <c>wait-empty:90</c>.</summary>
    public static Verdict Grade(string procedure, string? variant, string order) =>
        GraderOf(procedure, variant).Grade(new Answer([.. order.Split(' ').Select(EntryOf)])).Value;

    private static Grader GraderOf(string procedure, string? variant) => Grader.For(
        Library.FindProcedure(new(procedure))!.Procedure, variant is null ? null : new VariantId(variant)).Value;

    private static Entry EntryOf(string word) => word.Split(':') is [var id, var seconds]
        ? new(new StepId(id)) { Stated = Duration.FromSeconds(decimal.Parse(seconds, CultureInfo.InvariantCulture)) }
        : new(new StepId(word));
}

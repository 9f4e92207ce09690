using Training.Content.Modules;
using Training.Content.Rendering;
using Training.Records.Results;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Web.Features.SubjectResults;

/// <summary>The results of one rule, decoy or step.</summary>
/// <param name="Results">The results.</param>
/// <param name="Lesson">The module that teaches the job; null where none does.</param>
public sealed record SubjectResultsPage(Training.Records.Results.SubjectResults Results, Module? Lesson)
{
    /// <summary>How many parts are listed at most.</summary>
    public const int MostParts = 30;

    /// <summary>The section of the lesson that teaches it; null where none was found.</summary>
    public LessonSection? Section { get; init; }

    /// <summary>Why it matters and what can come of it, as the author wrote it.</summary>
    /// <param name="texts">The procedure in the reader's language.</param>
    public (string? Because, string? Otherwise) Reasons(Procedure texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return Results.What.Kind switch
        {
            ChanceKind.Rule when texts.Rules.FirstOrDefault(rule => rule.Id.Value == Results.What.Subject) is { } rule => (rule.Because, rule.Otherwise),
            ChanceKind.Decoy when texts.Decoys.FirstOrDefault(decoy => decoy.Id.Value == Results.What.Subject) is { } decoy => (decoy.Because, decoy.Otherwise),
            _ => (null, null),
        };
    }

    /// <summary>The shops in which it is got wrong most surely, first.</summary>
    public IReadOnlyList<Part<GroupChoice>> Shops { get; } = [.. Results.Shops.OrderByDescending(part => part.Share.Interval().Low).Take(MostParts)];
}

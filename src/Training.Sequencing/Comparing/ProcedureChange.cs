using Training.Sequencing.Procedures;

namespace Training.Sequencing.Comparing;

/// <summary>One thing that two revisions of a procedure say differently.</summary>
/// <param name="Kind">Whether it is new, gone or changed.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Said">What has changed, in a sentence.</param>
public sealed record ProcedureChange(ChangeKind Kind, ProblemSubject Subject, Sentence Said)
{
    /// <summary>The author's words before and after, where words have changed; null where it is not about words.</summary>
    public WordsChange? Words { get; init; }
}

/// <summary>An author's words before and after.</summary>
/// <param name="Before">The older words; empty where there were none.</param>
/// <param name="After">The newer words; empty where there are none.</param>
public sealed record WordsChange(string Before, string After);

/// <summary>What became of something from one revision to the next.</summary>
public enum ChangeKind
{
    /// <summary>The older one has nothing of it.</summary>
    New,

    /// <summary>The newer one has nothing of it.</summary>
    Gone,

    /// <summary>Both have it, and say it differently.</summary>
    Changed,
}

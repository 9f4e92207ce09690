namespace Training.Sequencing.Procedures;

/// <summary>Something that an author must mend in a procedure.</summary>
/// <param name="Code">A stable code, such as <c>loop</c> or <c>unknown-step</c>; see <see cref="AuthoringCodes"/>.</param>
/// <param name="Sentence">What is wrong and what to do.</param>
/// <param name="Subject">The rule, step, decoy or fact that it is about, so that a reader of files can say where it stands.</param>
public sealed record AuthoringProblem(string Code, string Sentence, ProblemSubject Subject);

/// <summary>Everything that an author must mend before a procedure can be graded by.</summary>
/// <param name="Problems">The problems, at least one.</param>
public sealed record AuthoringFaults(IReadOnlyList<AuthoringProblem> Problems)
{
    /// <inheritdoc/>
    public override string ToString() => string.Join(" ", Problems.Select(problem => problem.Sentence));
}

/// <summary>What a problem is about.</summary>
/// <param name="Kind">What sort of thing.</param>
/// <param name="Id">Its id; empty for the procedure as a whole.</param>
public readonly record struct ProblemSubject(SubjectKind Kind, string Id)
{
    /// <summary>The procedure as a whole.</summary>
    public static ProblemSubject Procedure { get; } = new(SubjectKind.Procedure, "");

    /// <summary>What the procedure says of the one that it undoes.</summary>
    public static ProblemSubject Mirror { get; } = new(SubjectKind.Mirror, "");
}

/// <summary>The sorts of thing that a problem can be about.</summary>
public enum SubjectKind
{
    /// <summary>The procedure as a whole.</summary>
    Procedure,

    /// <summary>A fact.</summary>
    Fact,

    /// <summary>A step.</summary>
    Step,

    /// <summary>A decoy.</summary>
    Decoy,

    /// <summary>A rule.</summary>
    Rule,

    /// <summary>What the procedure says of the one that it undoes.</summary>
    Mirror,
}

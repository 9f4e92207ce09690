namespace Training.Sequencing.Procedures;

/// <summary>Something that an author should know of a procedure that is sound.</summary>
/// <param name="Code">A stable code, such as <c>untouched-step</c>; see <see cref="RemarkCodes"/>.</param>
/// <param name="Sentence">What was seen and what can be done.</param>
/// <param name="Subject">What it is about.</param>
public sealed record AuthoringRemark(string Code, string Sentence, ProblemSubject Subject);

/// <summary>The stable codes of what an author should know; see <see cref="AuthoringRemark.Code"/>.</summary>
public static class RemarkCodes
{
    /// <summary>No rule touches a step.</summary>
    public const string UntouchedStep = "untouched-step";

    /// <summary>A pair of the mirrored procedure has no reversed pair here.</summary>
    public const string NotMirrored = "not-mirrored";

    /// <summary>A one-of group has a single member, so that there is nothing to choose.</summary>
    public const string LonelyChoice = "lonely-choice";

    /// <summary>A question was left open, as answering it would pass the limits of the analysis.</summary>
    public const string LeftOpen = "left-open";
}

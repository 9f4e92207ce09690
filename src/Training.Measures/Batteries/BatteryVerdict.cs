using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>What is done with a battery.</summary>
public enum BatteryVerdict
{
    /// <summary>It goes on the vehicle.</summary>
    Fit,

    /// <summary>It is charged first and read again.</summary>
    Charge,

    /// <summary>It does not go on any vehicle.</summary>
    Reject,

    /// <summary>The reading decides nothing: stop, and read again or ask.</summary>
    Stop,
}

/// <summary>A verdict on a battery, with everything that led to it.</summary>
/// <param name="Verdict">What is done.</param>
/// <param name="Reasons">Why, the deciding reason first.</param>
/// <param name="Working">The sums behind it.</param>
public sealed record BatteryDecision(BatteryVerdict Verdict, IReadOnlyList<BatteryReason> Reasons, Working Working);

/// <summary>One reason of a decision.</summary>
/// <param name="Code">A stable name for it, such as <c>cells-apart</c>.</param>
/// <param name="Sentence">The reason for the technician.</param>
/// <param name="Source">Where the rule is printed.</param>
public sealed record BatteryReason(string Code, Phrase Sentence, Source Source);

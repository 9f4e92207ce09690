using Training.Sequencing;

namespace Training.Records;

/// <summary>The refusals that every service shares; a screen may want to answer them with a code of their own.</summary>
public static class Refused
{
    /// <summary>There is no such thing, or it belongs to another shop: the one who asks learns the same either way.</summary>
    public static Refusal NotFound { get; } = new("There is nothing here by that name, or it is not yours to see.");

    /// <summary>The one who asks has not the role that it takes.</summary>
    public static Refusal NotAllowed { get; } = new("Your role does not allow that.");
}

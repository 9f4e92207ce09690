namespace Training.Sequencing.Procedures;

/// <summary>The stable codes of what an author must mend; see <see cref="AuthoringProblem.Code"/>.</summary>
public static class AuthoringCodes
{
    /// <summary>An id or a text that must say something is empty.</summary>
    public const string EmptyText = "empty-text";

    /// <summary>Two steps or decoys, rules, facts, values or variants have one id.</summary>
    public const string DuplicateId = "duplicate-id";

    /// <summary>A list that must name something is empty.</summary>
    public const string EmptyList = "empty-list";

    /// <summary>A list, or a setting of facts, names one thing twice.</summary>
    public const string NamedTwice = "named-twice";

    /// <summary>A rule names a step that the procedure does not have.</summary>
    public const string UnknownStep = "unknown-step";

    /// <summary>A rule names a decoy: what is never right has no order.</summary>
    public const string RuleOnDecoy = "rule-on-decoy";

    /// <summary>A step or rule names a fact that the procedure does not have.</summary>
    public const string UnknownFact = "unknown-fact";

    /// <summary>A step or rule names a value that the fact does not have.</summary>
    public const string UnknownValue = "unknown-value";

    /// <summary>A step, or the request, names a kind of vehicle that the procedure does not have.</summary>
    public const string UnknownVariant = "unknown-variant";

    /// <summary>A wait step has a time of its own.</summary>
    public const string WaitTakesTime = "wait-takes-time";

    /// <summary>A member of a one-of group is optional, too.</summary>
    public const string OptionalChoice = "optional-choice";

    /// <summary>There is nothing to do for a kind of vehicle.</summary>
    public const string NoSteps = "no-steps";

    /// <summary>There are more steps, or more combinations of choices, than the engine looks through.</summary>
    public const string TooMuch = "too-much";

    /// <summary>A step that sets a needed fact is optional or one of a group.</summary>
    public const string SetterNotRequired = "setter-not-required";

    /// <summary>Two steps set a needed fact and no rule says which comes first.</summary>
    public const string SettersUnordered = "setters-unordered";

    /// <summary>It is open in which stretch a step stands that needs a fact.</summary>
    public const string StateOpen = "state-open";

    /// <summary>A step can stand in no stretch in which the fact has the value that it needs.</summary>
    public const string StateImpossible = "state-impossible";

    /// <summary>Rules run in a circle.</summary>
    public const string Loop = "loop";

    /// <summary>The listing is not itself a right order.</summary>
    public const string Listing = "listing";

    /// <summary>Nothing that must come between two steps can fill the time that a rule asks for.</summary>
    public const string GapUnfillable = "gap-unfillable";
}

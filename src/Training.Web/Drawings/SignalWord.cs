using Training.Sequencing.Procedures;

namespace Training.Web.Drawings;

/// <summary>The signal words of ANSI Z535.4 and ISO 3864-2, the gravest first.</summary>
public enum SignalWord
{
    /// <summary>Somebody will be killed or badly hurt.</summary>
    Danger,

    /// <summary>Somebody can be killed or badly hurt.</summary>
    Warning,

    /// <summary>Somebody can be hurt a little.</summary>
    Caution,

    /// <summary>Something can be damaged.</summary>
    Notice,
}

/// <summary>Which signal word goes with what is at stake.</summary>
public static class SignalWords
{
    /// <summary>The signal word for a harm.</summary>
    /// <param name="stakes">What is at stake.</param>
    public static SignalWord Of(Stakes stakes) => stakes switch
    {
        { Harm: not Harm.People } => SignalWord.Notice,
        { Severity: Severity.Critical } => SignalWord.Danger,
        { Severity: Severity.Serious } => SignalWord.Warning,
        _ => SignalWord.Caution,
    };
}

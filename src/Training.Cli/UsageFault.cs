namespace Training.Cli;

/// <summary>Why the words of a command cannot be understood.</summary>
/// <param name="Sentence">The sentence for whoever wrote them.</param>
internal sealed record UsageFault(string Sentence);

using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Questions;

/// <summary>The ways to ask about an order of work by options to choose from.</summary>
public enum ChoiceKind
{
    /// <summary>At which step does a colleague's order first go wrong?</summary>
    FirstFault,

    /// <summary>Which of these may be done now?</summary>
    Next,

    /// <summary>How long must the wait be at least?</summary>
    Wait,

    /// <summary>What can happen if this is done now?</summary>
    WhatIf,
}

/// <summary>What may be shown of a question before it is answered: nothing here tells which options are right.</summary>
/// <param name="Kind">How it is asked.</param>
/// <param name="Done">
/// What was done, in order: for <see cref="ChoiceKind.FirstFault"/> the colleague's whole order, otherwise what stands
/// before the moment that is asked about.
/// </param>
/// <param name="Options">The options, in the order in which they are shown.</param>
public sealed record ChoicePrompt(ChoiceKind Kind, IReadOnlyList<Entry> Done, IReadOnlyList<Option> Options)
{
    /// <summary>
    /// For <see cref="ChoiceKind.Wait"/> the wait step whose length is asked for, for <see cref="ChoiceKind.WhatIf"/>
    /// what is done now; otherwise null.
    /// </summary>
    public StepId? About { get; init; }

    /// <summary>For <see cref="ChoiceKind.Wait"/> what is done after the wait, up to the step that had to be waited for.</summary>
    public IReadOnlyList<Entry> Then { get; init; } = [];

    /// <summary>Whether several options may be chosen; otherwise just one is.</summary>
    public bool TakesSeveral => Kind == ChoiceKind.Next;
}

/// <summary>An option: just one of its parts is there, but for its id.</summary>
/// <param name="Id">Its name within the question: a number from 1 that says nothing about it.</param>
public sealed record Option(string Id)
{
    /// <summary>A place, from 1, in the order that is shown.</summary>
    public int? Place { get; init; }

    /// <summary>A step or decoy.</summary>
    public StepId? Step { get; init; }

    /// <summary>A length of time.</summary>
    public Duration? Time { get; init; }

    /// <summary>What can happen.</summary>
    public Consequence? Consequence { get; init; }
}

/// <summary>What an author wrote under <c>otherwise</c>.</summary>
/// <param name="Of">The rule or decoy that it was written for, to find its text in another language; not to be shown.</param>
/// <param name="Text">The text.</param>
public sealed record Consequence(ProblemSubject Of, string Text);

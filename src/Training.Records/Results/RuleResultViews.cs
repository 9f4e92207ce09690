using NodaTime;
using Training.Content.Procedures;
using Training.Records.Asking;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Records.Results;

/// <summary>How often one thing of a procedure is got wrong.</summary>
/// <param name="What">The rule, decoy or step.</param>
/// <param name="Share">How many people of how many who had the chance; null where they are too few to be shown.</param>
public sealed record ResultLine(Chance What, Share? Share)
{
    /// <summary>At least how large the share is, with a confidence of 95 %: by this the lines are ordered, so that a few people weigh less than many.</summary>
    public double AtLeast => Share?.Interval().Low ?? -1;
}

/// <summary>A line with the procedure that it belongs to.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="Line">The line.</param>
public sealed record ProcedureResultLine(WrittenProcedure Procedure, ResultLine Line);

/// <summary>A procedure in a list.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="People">How many people gave an order of it, in any of the sources the most; null where they are too few to be shown.</param>
/// <param name="Worst">What is got wrong most surely; null where nothing is.</param>
public sealed record ProcedureOverview(WrittenProcedure Procedure, long? People, ResultLine? Worst);

/// <summary>A group of people whose results are asked for.</summary>
/// <param name="Cut">By what people are told apart.</param>
/// <param name="Group">Which group.</param>
public sealed record GroupAsked(Cut Cut, string Group);

/// <summary>A group of people that can be chosen.</summary>
/// <param name="Cut">By what people are told apart.</param>
/// <param name="Group">Which group, as it is asked for.</param>
/// <param name="Name">What it is called: a shop's name, the code of a language, a revision's number.</param>
public sealed record GroupChoice(Cut Cut, string Group, string Name)
{
    /// <summary>For a revision, since when it is served.</summary>
    public Instant? Since { get; init; }
}

/// <summary>The results of a procedure.</summary>
/// <param name="Procedure">The procedure as it is served.</param>
/// <param name="Source">Where the orders were given.</param>
/// <param name="Group">Whose they are; null for everybody whom the one who asks may see.</param>
/// <param name="Lines">What can be got wrong, what is got wrong most surely first.</param>
/// <param name="Orders">The commonest wrong orders; empty for a group of people.</param>
/// <param name="Groups">The groups that can be chosen; empty for people of a shop.</param>
public sealed record ProcedureResults(
    WrittenProcedure Procedure,
    WorkSource Source,
    GroupChoice? Group,
    IReadOnlyList<ResultLine> Lines,
    IReadOnlyList<WrongOrderLine> Orders,
    IReadOnlyList<GroupChoice> Groups);

/// <summary>Wrong orders that get the same things wrong.</summary>
/// <param name="Code">Names them.</param>
/// <param name="People">How many different people gave one.</param>
/// <param name="Broken">What they get wrong.</param>
/// <param name="Cost">How many changes mend the example.</param>
public sealed record WrongOrderLine(string Code, int People, IReadOnlyList<Chance> Broken, int Cost);

/// <summary>Wrong orders with an example, which nobody's name stands beside.</summary>
/// <param name="Procedure">The procedure as it is served.</param>
/// <param name="Line">The wrong orders.</param>
/// <param name="Example">The one of them that is mended by the fewest changes.</param>
/// <param name="Variant">The kind of vehicle.</param>
public sealed record WrongOrderView(WrittenProcedure Procedure, WrongOrderLine Line, GradedOrder Example, VariantId? Variant);

/// <summary>The results of one thing of a procedure.</summary>
/// <param name="Procedure">The procedure as it is served.</param>
/// <param name="What">The rule, decoy or step.</param>
/// <param name="Sources">For each source how many of everybody whom the one who asks may see.</param>
/// <param name="Source">The source that the rest is about.</param>
public sealed record SubjectResults(
    WrittenProcedure Procedure, Chance What, IReadOnlyList<(WorkSource Source, Share? Share)> Sources, WorkSource Source)
{
    /// <summary>By revision, the oldest first.</summary>
    public IReadOnlyList<Part<GroupChoice>> Revisions { get; init; } = [];

    /// <summary>By shop.</summary>
    public IReadOnlyList<Part<GroupChoice>> Shops { get; init; } = [];

    /// <summary>By language.</summary>
    public IReadOnlyList<Part<GroupChoice>> Languages { get; init; } = [];

    /// <summary>By month, the oldest first.</summary>
    public IReadOnlyList<Part<GroupChoice>> Months { get; init; } = [];

    /// <summary>The changes from each revision to the next.</summary>
    public IReadOnlyList<RevisionChange> Changes => [.. Revisions.Zip(Revisions.Skip(1), (before, after) => new RevisionChange(before, after))];
}

/// <summary>What a revision changed.</summary>
/// <param name="Before">Who met the thing first in the revision before.</param>
/// <param name="After">Who met it first in this one: other people, so that the two are independent.</param>
public sealed record RevisionChange(Part<GroupChoice> Before, Part<GroupChoice> After)
{
    /// <summary>The share after, less the share before.</summary>
    public double Difference => After.Share.Value!.Value - Before.Share.Value!.Value;

    /// <summary>Between which values the difference lies (<see cref="Share.Less"/>).</summary>
    public Interval Interval => After.Share.Less(Before.Share)!.Value;
}

using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Layouts;

/// <summary>
/// A procedure laid out for one kind of vehicle: every step, fact and value has a small number, so that grading works
/// on arrays. Steps are numbered in the order of the listing; what is never right in this job follows after them.
/// </summary>
/// <remarks>Only procedures whose names hold together are laid out; see <c>Authoring.NamesCheck</c>.</remarks>
internal sealed class Layout
{
    private readonly Dictionary<StepId, int> numbers;

    private Layout(Procedure procedure, VariantId? variant)
    {
        Procedure = procedure;
        Variant = variant;
        Steps = [.. procedure.StepsFor(variant)];
        Strangers =
        [
            .. procedure.Decoys.Select(Stranger.Of),
            .. procedure.Steps.Where(step => !step.IsFor(variant)).Select(Stranger.Of),
        ];
        numbers = new(Steps.Length + Strangers.Length);
        for (var s = 0; s < Steps.Length; s++) numbers.Add(Steps[s].Id, s);
        for (var d = 0; d < Strangers.Length; d++) numbers.Add(Strangers[d].Id, Steps.Length + d);
        Takes = [.. Steps.Select(step => step.Takes.Seconds)];
        Groups = [.. Steps.Where(step => step.Choice is not null).GroupBy(step => step.Choice!.Value)
            .Select(group => new Group(group.Key, [.. group.Select(step => numbers[step.Id])]))];
        GroupOf = new int[Steps.Length];
        Array.Fill(GroupOf, -1);
        for (var g = 0; g < Groups.Length; g++)
            foreach (var member in Groups[g].Members) GroupOf[member] = g;
        Facts = new(procedure, Steps);
        Links = LinksOf(procedure.Rules);
        Gaps = [.. Links.Where(link => link.AtLeast is not null)];
        GapsBefore = [.. Steps.Select((_, s) => Gaps.Where(gap => gap.Then == s).ToArray())];
        Needs = [.. procedure.Rules.OfType<StateRule>().Where(rule => IsStep(rule.Step))
            .Select(rule => new Need(numbers[rule.Step], rule, [.. rule.OnlyWhile.Select(Facts.NumberOf)]))];
        NeedsOf = [.. Steps.Select((_, s) => Needs.Where(need => need.Step == s).ToArray())];
    }

    public Procedure Procedure { get; }

    public VariantId? Variant { get; }

    /// <summary>The steps that exist for this kind of vehicle, in the order of the listing.</summary>
    public Step[] Steps { get; }

    /// <summary>Decoys, and steps of other kinds of vehicle; numbered on from the steps.</summary>
    public Stranger[] Strangers { get; }

    public int StepCount => Steps.Length;

    /// <summary>How long each step takes, in seconds.</summary>
    public decimal[] Takes { get; }

    /// <summary>The one-of groups, in the order of their first members.</summary>
    public Group[] Groups { get; }

    /// <summary>The number of the one-of group of each step, or -1.</summary>
    public int[] GroupOf { get; }

    public FactLayout Facts { get; }

    /// <summary>Every <c>first</c>/<c>then</c> pair whose steps both exist for this kind of vehicle.</summary>
    public Link[] Links { get; }

    /// <summary>The links that ask for a time between.</summary>
    public Link[] Gaps { get; }

    /// <summary>The gaps that must have passed before each step.</summary>
    public Link[][] GapsBefore { get; }

    /// <summary>Every <c>only-while</c> of a step that exists for this kind of vehicle.</summary>
    public Need[] Needs { get; }

    /// <summary>The needs of each step.</summary>
    public Need[][] NeedsOf { get; }

    public static Layout Of(Procedure procedure, VariantId? variant) => new(procedure, variant);

    /// <summary>Whether a step is done in every right order: neither optional nor one of a group.</summary>
    public bool IsRequired(int step) => !Steps[step].IsOptional && GroupOf[step] < 0;

    public bool IsWait(int step) => Steps[step].IsWait;

    /// <summary>The number of a step, decoy or step of another kind of vehicle; false where the procedure has none.</summary>
    public bool TryNumber(StepId id, out int number) => numbers.TryGetValue(id, out number);

    public StepId IdOf(int number) => number < Steps.Length ? Steps[number].Id : Strangers[number - Steps.Length].Id;

    /// <summary>A step or decoy as a sentence names it.</summary>
    public StepName Named(int number) => new(IdOf(number), DoOf(number));

    public string DoOf(int number) => number < Steps.Length ? Steps[number].Do : Strangers[number - Steps.Length].Do;

    /// <summary>Whether two steps are different members of one group, and so never both in one right order.</summary>
    public bool AreAlternatives(int a, int b) => a != b && GroupOf[a] >= 0 && GroupOf[a] == GroupOf[b];

    private bool IsStep(StepId id) => numbers.TryGetValue(id, out var number) && number < Steps.Length;

    private Link[] LinksOf(IReadOnlyList<Rule> rules)
    {
        var links = new List<Link>();
        foreach (var rule in rules.OfType<OrderRule>())
            foreach (var first in rule.First.Where(IsStep))
                foreach (var then in rule.Then.Where(IsStep))
                    links.Add(new(numbers[first], numbers[then], rule, rule.AtLeast?.Seconds) { Steps = [first, then] });
        return [.. links];
    }
}

/// <summary>A one-of group and its members in the order of the listing.</summary>
internal sealed record Group(ChoiceId Id, int[] Members);

/// <summary>One pair of a <c>first</c>/<c>then</c> rule.</summary>
internal sealed record Link(int First, int Then, OrderRule Rule, decimal? AtLeast)
{
    /// <summary>The earlier step and the later one, as findings name them.</summary>
    public required IReadOnlyList<StepId> Steps { get; init; }

    /// <summary>
    /// What is said where the pair stands the wrong way round, made by the first finding that needs it and shared by all:
    /// nothing of one answer is in it, and two threads that make it at once make it alike.
    /// </summary>
    public FindingText? WrongWayRound { get; set; }
}

/// <summary>What an <c>only-while</c> rule asks of one step.</summary>
internal sealed record Need(int Step, StateRule Rule, Setting[] Settings);

/// <summary>A fact and a value by number.</summary>
internal readonly record struct Setting(int Fact, int Value);

/// <summary>What can be answered but is never right in this job.</summary>
internal sealed record Stranger(StepId Id, string Do, Stakes Stakes, string? Because, string? Otherwise, bool IsDecoy)
{
    public static Stranger Of(Decoy decoy) =>
        new(decoy.Id, decoy.Do, decoy.Stakes, decoy.Because, decoy.Otherwise, IsDecoy: true) { IsAbsentStep = decoy.IsAbsentStep };

    /// <summary>A step of another kind of vehicle; a wait keeps its right to a time.</summary>
    public static Stranger Of(Step step) =>
        new(step.Id, step.Do, step.Stakes, null, null, IsDecoy: false) { IsWait = step.IsWait };

    public bool IsWait { get; init; }

    /// <summary>Whether it is a step that cannot be done in this situation.</summary>
    public bool IsAbsentStep { get; init; }
}

namespace Training.Sequencing.Procedures;

/// <summary>
/// A job of work as its author wrote it: the right steps, what is never right, and the rules with their reasons.
/// The value says what was written, not that it makes sense: whether a right order exists is found when a plan is
/// made of it for one kind of vehicle.
/// </summary>
/// <param name="Id">The name, the same as the file's.</param>
/// <param name="Title">What the job is called.</param>
/// <param name="Revision">Counted up by the author from 1.</param>
public sealed record Procedure(ProcedureId Id, string Title, int Revision)
{
    /// <summary>The kinds of vehicle that the procedure tells apart; empty where it does not. The first is the default.</summary>
    public IReadOnlyList<VariantId> Variants { get; init; } = [];

    /// <summary>The kinds of vehicle, each of which has an order of its own; none named, where the procedure tells none apart, is one.</summary>
    public IEnumerable<VariantId?> Kinds => Variants.Count == 0 ? [null] : Variants.Select(variant => (VariantId?)variant);

    /// <summary>What has a state on the vehicle.</summary>
    public IReadOnlyList<Fact> Facts { get; init; } = [];

    /// <summary>The right steps; the listing itself is a right order, the witness.</summary>
    public IReadOnlyList<Step> Steps { get; init; } = [];

    /// <summary>What is never right.</summary>
    public IReadOnlyList<Decoy> Decoys { get; init; } = [];

    /// <summary>What holds of the order, and why.</summary>
    public IReadOnlyList<Rule> Rules { get; init; } = [];

    /// <summary>The procedure that this one undoes, if it says so.</summary>
    public Mirror? Mirror { get; init; }

    /// <summary>The steps that exist for a kind of vehicle, as listed.</summary>
    /// <param name="kind">The kind; null where the procedure tells none apart.</param>
    public IEnumerable<Step> StepsFor(VariantId? kind) => Steps.Where(step => step.IsFor(kind));
}

/// <summary>Something with a state, such as the key or the isolator.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Values">Its possible values, at least one; the first holds at the start.</param>
public sealed record Fact(FactId Id, IReadOnlyList<FactValue> Values)
{
    /// <summary>What it is called, for the technician: its id, unless a translation says otherwise.</summary>
    public string Called { get; init; } = Id.Value;

    /// <summary>What its values are called, in their order: their ids, unless a translation says otherwise.</summary>
    public IReadOnlyList<string> ValuesCalled { get; init; } = [.. Values.Select(value => value.Value)];

    /// <summary>What a value is called; its id where it is none of the fact's.</summary>
    /// <param name="value">The value.</param>
    public string NameOf(FactValue value)
    {
        for (var place = 0; place < Values.Count; place++)
            if (Values[place] == value) return ValuesCalled[place];
        return value.Value;
    }
}

/// <summary>A right step of a procedure.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Do">What the technician reads: an order in a few words.</param>
public sealed record Step(StepId Id, string Do)
{
    /// <summary>How long it takes to do; no time where the author did not say.</summary>
    public Duration Takes { get; init; }

    /// <summary>Whether the step is a wait, whose length the technician states.</summary>
    public bool IsWait { get; init; }

    /// <summary>Whether the job is right without it, too.</summary>
    public bool IsOptional { get; init; }

    /// <summary>The one-of group that it belongs to, if any.</summary>
    public ChoiceId? Choice { get; init; }

    /// <summary>The kinds of vehicle that it exists for; empty means all.</summary>
    public IReadOnlyList<VariantId> Variants { get; init; } = [];

    /// <summary>The values that facts have once it is done.</summary>
    public IReadOnlyList<FactSetting> Sets { get; init; } = [];

    /// <summary>What is at stake when it is left out.</summary>
    public Stakes Stakes { get; init; } = Stakes.Default;

    /// <summary>Whether the step exists for a kind of vehicle.</summary>
    /// <param name="kind">The kind; null where the procedure tells none apart.</param>
    public bool IsFor(VariantId? kind) => Variants.Count == 0 || (kind is { } one && Variants.Contains(one));
}

/// <summary>A fact and a value: what a step sets, or what a rule asks for.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="Value">The value.</param>
public readonly record struct FactSetting(FactId Fact, FactValue Value);

/// <summary>Something that is never right to do in this job, offered among the steps.</summary>
/// <param name="Id">Its name; decoys share one name space with steps.</param>
/// <param name="Do">What the technician reads.</param>
public sealed record Decoy(StepId Id, string Do)
{
    /// <summary>Why it is never right.</summary>
    public string? Because { get; init; }

    /// <summary>What happens if it is done.</summary>
    public string? Otherwise { get; init; }

    /// <summary>What is at stake.</summary>
    public Stakes Stakes { get; init; } = Stakes.Default;

    /// <summary>Whether it is right on other days, a step that cannot be done in this situation (<see cref="AbsentSteps"/>).</summary>
    public bool IsAbsentStep { get; init; }
}

/// <summary>That a procedure undoes another one.</summary>
/// <param name="Of">The other procedure.</param>
/// <param name="Pairs">Which of its steps is undone by which of ours.</param>
public sealed record Mirror(ProcedureId Of, IReadOnlyList<MirrorPair> Pairs);

/// <summary>A step of another procedure and the step of this one that undoes it.</summary>
/// <param name="Theirs">The other's step.</param>
/// <param name="Mine">The step here.</param>
public readonly record struct MirrorPair(StepId Theirs, StepId Mine);

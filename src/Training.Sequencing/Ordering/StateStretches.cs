using Training.Sequencing.Layouts;

namespace Training.Sequencing.Ordering;

/// <summary>
/// The run as one fact cuts it up: the steps that set it stand in one forced order, and between them its value is
/// known. Neighbouring stretches with the same value are one stretch: a step that sets what already holds ends nothing.
/// </summary>
internal sealed class StateStretches
{
    private readonly List<int> chain;
    private readonly int[] valueBefore;

    private StateStretches(List<int> chain, int[] valueBefore, Stretch[] stretches) =>
        (this.chain, this.valueBefore, Stretches) = (chain, valueBefore, stretches);

    public Stretch[] Stretches { get; }

    /// <summary>Cuts the run at the steps that set the fact.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="steps">The step set.</param>
    /// <param name="after">The order so far.</param>
    /// <param name="fact">The fact.</param>
    /// <param name="unordered">Two setters that no rule puts in order, where nothing is returned.</param>
    public static StateStretches? TryCut(
        Layout layout, StepSet steps, BitRows after, int fact, out (int, int) unordered)
    {
        unordered = default;
        var chain = new List<int>();
        for (var s = 0; s < layout.StepCount; s++)
            if (steps.Has(s) && layout.Facts.SetBy(s, fact) >= 0) chain.Add(s);
        chain.Sort((a, b) => a == b ? 0 : after[a, b] ? -1 : after[b, a] ? 1 : a.CompareTo(b));
        for (var i = 1; i < chain.Count; i++)
        {
            if (after[chain[i - 1], chain[i]]) continue;
            unordered = (chain[i - 1], chain[i]);
            return null;
        }

        var valueBefore = new int[chain.Count];
        var stretches = new List<Stretch>();
        var value = 0;
        var opener = -1;
        for (var i = 0; i < chain.Count; i++)
        {
            valueBefore[i] = value;
            var next = layout.Facts.SetBy(chain[i], fact);
            if (next == value) continue;
            stretches.Add(new(value, opener, chain[i]));
            (value, opener) = (next, chain[i]);
        }

        stretches.Add(new(value, opener, -1));
        return new(chain, valueBefore, [.. stretches]);
    }

    /// <summary>Where a step may stand that needs a value, given the order so far.</summary>
    public Standing Place(int step, int value, BitRows after)
    {
        var link = chain.IndexOf(step);
        if (link >= 0) return new(valueBefore[link] == value ? StandingKind.Settled : StandingKind.Impossible, default);
        var found = default(Stretch);
        var count = 0;
        foreach (var stretch in Stretches)
        {
            if (stretch.Value != value) continue;
            if (stretch.Opener >= 0 && after[step, stretch.Opener]) continue;
            if (stretch.Ender >= 0 && after[stretch.Ender, step]) continue;
            found = stretch;
            count++;
        }

        return new(count switch { 0 => StandingKind.Impossible, 1 => StandingKind.Settled, _ => StandingKind.Open }, found);
    }
}

/// <summary>A part of the run in which a fact has one value: after one step (or from the start, -1) until another.</summary>
internal readonly record struct Stretch(int Value, int Opener, int Ender);

/// <summary>What is known of where a step stands that needs a value.</summary>
internal readonly record struct Standing(StandingKind Kind, Stretch Stretch);

internal enum StandingKind
{
    /// <summary>In no stretch with the value.</summary>
    Impossible,

    /// <summary>In just one, or the step is itself a setter and the value before it is right.</summary>
    Settled,

    /// <summary>In one of several.</summary>
    Open,
}

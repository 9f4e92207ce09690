using Training.Measures.Quantities;

namespace Training.Measures.Readings;

/// <summary>
/// From which numbers a question draws one input: whole steps between two ends, or a list, such as the cross-sections
/// that are made.
/// </summary>
public sealed record InputRange
{
    private const int MostNumbers = 10_000;
    private const decimal Farthest = 1e9m;
    private const decimal Finest = 1e-9m;

    private readonly decimal from;
    private readonly decimal to;
    private readonly decimal step;
    private readonly IReadOnlyList<decimal>? listed;

    private InputRange(
        string name, decimal from, decimal to, decimal step, IReadOnlyList<decimal>? listed, string? unit,
        decimal division)
    {
        Name = name;
        Unit = unit;
        Division = division;
        (this.from, this.to, this.step, this.listed) = (from, to, step, listed);
    }

    /// <summary>The measure's input.</summary>
    public string Name { get; }

    /// <summary>One of the units of the input's kind; null takes the measure's own.</summary>
    public string? Unit { get; }

    /// <summary>
    /// One division of the instrument, where the technician reads the number off a scale; a reading is good to half of
    /// it. Nought where the number is simply told.
    /// </summary>
    public decimal Division { get; }

    /// <summary>Whole steps from one end to the other.</summary>
    /// <param name="name">The measure's input.</param>
    /// <param name="from">The smallest number.</param>
    /// <param name="to">The greatest; it is drawn only where whole steps reach it.</param>
    /// <param name="step">The distance between the numbers; more than nothing.</param>
    /// <param name="unit">The unit, or null for the measure's own.</param>
    /// <param name="division">See <see cref="Division"/>.</param>
    public static InputRange Steps(
        string name, decimal from, decimal to, decimal step, string? unit = null, decimal division = 0) =>
        new(name, from, to, step, null, unit, division);

    /// <summary>One number of a list.</summary>
    /// <param name="name">The measure's input.</param>
    /// <param name="numbers">The numbers in any order; at least one.</param>
    /// <param name="unit">The unit, or null for the measure's own.</param>
    /// <param name="division">See <see cref="Division"/>.</param>
    public static InputRange OneOf(
        string name, IReadOnlyList<decimal> numbers, string? unit = null, decimal division = 0) =>
        new(name, 0, 0, 1, [.. numbers.Order()], unit, division);

    internal int Count => listed?.Count ?? (int)decimal.Floor((to - from) / step) + 1;

    internal decimal this[int at] => listed is null ? from + step * at : listed[at];

    /// <summary>The number that bits from a seed's stream stand for, every one as likely as the next.</summary>
    internal decimal Draw(ulong bits) => this[(int)Math.BigMul(bits, (ulong)Count, out _)];

    internal Objection? ObjectionFor(MeasureInput input)
    {
        if (listed is { Count: 0 })
            return new($"The list of “{Name}” is empty.");
        if (step < Finest || to < from || Division < 0)
            return new($"The range of “{Name}” needs from ≤ to, a step above 0 and a division of 0 or more.");
        if (Math.Abs(from) > Farthest || Math.Abs(to) > Farthest || (to - from) / step >= MostNumbers
            || listed?.Count > MostNumbers)
            return new($"The range of “{Name}” has too many numbers: at most {MostNumbers}.");
        if (UnitOf(input) is not { } unit)
            return new($"“{Unit}” is not a unit of “{Name}”.");
        return Enumerable.Range(0, Count)
            .Select(at => input.Kind.ObjectionTo(unit.ToBase((double)this[at])))
            .FirstOrDefault(objection => objection is not null);
    }

    internal Unit? UnitOf(MeasureInput input) =>
        input.Kind.Units.FirstOrDefault(unit => unit.Symbol == (Unit ?? input.Unit));
}

namespace Training.Measures.Quantities;

/// <summary>
/// A number that knows what it measures. The types are our own and small, not those of a units library: the trade
/// needs a dozen quantities, each refused outside physics with a sentence that a technician can act on, read from
/// typed answers in the same way in every language, and without a package on the ground floor. A general library
/// brings hundreds of units, cultures of its own and no such sentences.
/// </summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IQuantity<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What is measured, in which units, within which limits.</summary>
    static abstract QuantityKind Kind { get; }

    /// <summary>The quantity, or the objection to a number outside physics.</summary>
    /// <param name="value">The number in the kind's base unit.</param>
    static abstract Outcome<TSelf> Of(double value);

    /// <summary>The number in the kind's base unit.</summary>
    double InBaseUnit { get; }
}

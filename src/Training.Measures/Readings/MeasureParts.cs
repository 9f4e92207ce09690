using Training.Measures.Quantities;
using Training.Measures.Workings;

namespace Training.Measures.Readings;

/// <summary>How the lists of measures are put together.</summary>
internal static class MeasureParts
{
    public static MeasureInput Input<T>(string name, Phrase title, string? unit = null)
        where T : struct, IQuantity<T> => new(name, title, T.Kind, unit ?? T.Kind.BaseUnit.Symbol);

    public static MeasureAnswer Answer<T>(decimal division, string? unit = null)
        where T : struct, IQuantity<T> => new(T.Kind, unit ?? T.Kind.BaseUnit.Symbol, division);

    public static MeasureChoice Choice<T>(
        string name, Phrase title, IReadOnlyList<T> options, Func<T, string> id, Func<T, Phrase> says) =>
        new(name, title, options.ToDictionary(id, says, StringComparer.Ordinal));

    /// <summary>A result as a bare number in its base unit.</summary>
    public static Outcome<Worked<double>> Bare<T>(this Outcome<Worked<T>> worked)
        where T : struct, IQuantity<T> =>
        worked.Then<Worked<double>>(result => new Worked<double>(result.Value.InBaseUnit, result.Working));
}

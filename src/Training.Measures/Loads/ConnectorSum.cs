using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Loads;

/// <summary>A load that is to hang on a connector.</summary>
/// <param name="Name">What it is, such as <c>marker lamps</c>.</param>
/// <param name="Current">What it draws.</param>
public sealed record Load(string Name, Current Current);

/// <summary>What hangs on one add-on connector, and what is left of its rating.</summary>
/// <param name="Total">All loads on at once.</param>
/// <param name="Margin">What is left; below zero where the connector is overloaded.</param>
public sealed record ConnectorSum(Current Total, Current Margin)
{
    /// <summary>Whether the rating is not passed.</summary>
    public bool IsWithin => Margin.Amperes >= 0;

    /// <summary>Adds the loads up, as if all were on at once.</summary>
    /// <param name="loads">The loads; none draws less than nothing.</param>
    /// <param name="rating">What the vehicle's own instructions allow on the connector.</param>
    public static Outcome<Worked<ConnectorSum>> Of(IReadOnlyList<Load> loads, Current rating)
    {
        ArgumentNullException.ThrowIfNull(loads);
        if (rating.Amperes <= 0)
            return new Objection("The rating of a connector is more than 0 A: look it up for this vehicle.");
        if (loads.FirstOrDefault(load => load.Current.Amperes < 0) is { } backwards)
            return new Objection($"The load “{backwards.Name}” cannot draw less than 0 A.");
        // Currents are given to a milliampere or so: 0.1 A and 0.2 A fill a connector of 0.3 A, binary fractions or not.
        var sum = Math.Round(loads.Sum(load => load.Current.Amperes), 9);
        return Current.Of(sum).Then<Worked<ConnectorSum>>(total =>
        {
            var margin = Current.FromAmperes(Math.Round(rating.Amperes - total.Amperes, 9));
            return new Worked<ConnectorSum>(
                new(total, margin), new([Sum(loads, total), Left(rating, total, margin)]));
        });
    }

    private static WorkingLine Sum(IReadOnlyList<Load> loads, Current total) => new(
        "All loads on at once",
        new("I", total.Amperes, "A"),
        loads.Count == 0 ? "0" : string.Join(" + ", loads.Select((_, at) => Letter(at))),
        [.. loads.Select((load, at) => new Term(Letter(at), load.Current.Amperes, "A"))],
        Documents.Arithmetic);

    private static WorkingLine Left(Current rating, Current total, Current margin) => new(
        "Left of the connector's rating",
        new("Im", margin.Amperes, "A"),
        "In − I",
        [new("In", rating.Amperes, "A"), new("I", total.Amperes, "A")],
        Documents.Arithmetic);

    private static string Letter(int at) => FormattableString.Invariant($"I{at + 1}");
}

using System.Globalization;

namespace Training.Measures.Quantities;

/// <summary>How long something lasts or stands.</summary>
public readonly record struct Time : IQuantity<Time>
{
    private Time(double value) => Hours = value;

    /// <inheritdoc/>
    public static QuantityKind Kind { get; } = new(
        "time", 0, QuantityKind.Enormous, "is never below zero, and nothing here lasts this long", "48 h",
        [
            new("h", 1, "hour", "hours", "hr", "hrs"),
            new("min", 1.0 / 60, "minute", "minutes"),
            new("s", 1.0 / 3600, "sec", "second", "seconds"),
            new("d", 24, "day", "days"),
        ]);

    /// <summary>In hours.</summary>
    public double Hours { get; }

    double IQuantity<Time>.InBaseUnit => Hours;

    /// <summary>From a number of ours that is known to be possible.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not: a fault of ours.</exception>
    public static Time FromHours(double value) => new(Kind.Insist(value));

    /// <inheritdoc/>
    public static Outcome<Time> Of(double value) =>
        Kind.ObjectionTo(value) is { } objection ? objection : new Time(value);

    /// <summary>In days of 24 h.</summary>
    public double Days => Hours / 24;

    /// <summary>From days of 24 h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not possible: a fault of ours.</exception>
    public static Time FromDays(double days) => new(Kind.Insist(days * 24));

    /// <summary>From minutes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not possible: a fault of ours.</exception>
    public static Time FromMinutes(double minutes) => new(Kind.Insist(minutes / 60));

    /// <summary>Rounded for print alone.</summary>
    public override string ToString() => Kind.Print(Hours, CultureInfo.InvariantCulture);
}

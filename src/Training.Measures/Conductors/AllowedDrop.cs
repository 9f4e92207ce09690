using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Conductors;

/// <summary>A published limit for the voltage drop between the source and a load.</summary>
/// <param name="Id">The name by which a question calls it.</param>
/// <param name="System">The system's voltage.</param>
/// <param name="Greatest">The greatest drop that is allowed.</param>
/// <param name="Source">Where it is printed.</param>
public sealed record AllowedDrop(string Id, Voltage System, Voltage Greatest, Source Source)
{
    /// <summary>14 V system, load that runs on: 0.5 V.</summary>
    public static AllowedDrop Continuous14 { get; } = Continuous(14, 0.5);

    /// <summary>28 V system, load that runs on: 1 V.</summary>
    public static AllowedDrop Continuous28 { get; } = Continuous(28, 1);

    /// <summary>115 V system, load that runs on: 4 V.</summary>
    public static AllowedDrop Continuous115 { get; } = Continuous(115, 4);

    /// <summary>200 V system, load that runs on: 7 V.</summary>
    public static AllowedDrop Continuous200 { get; } = Continuous(200, 7);

    /// <summary>14 V system, load for a short time: 1 V (from memory).</summary>
    public static AllowedDrop Intermittent14 { get; } = Intermittent(14, 1);

    /// <summary>28 V system, load for a short time: 2 V (from memory).</summary>
    public static AllowedDrop Intermittent28 { get; } = Intermittent(28, 2);

    /// <summary>115 V system, load for a short time: 8 V (from memory).</summary>
    public static AllowedDrop Intermittent115 { get; } = Intermittent(115, 8);

    /// <summary>200 V system, load for a short time: 14 V (from memory).</summary>
    public static AllowedDrop Intermittent200 { get; } = Intermittent(200, 14);

    /// <summary>The limits that are printed as volts.</summary>
    public static IReadOnlyList<AllowedDrop> All { get; } =
    [
        Continuous14, Continuous28, Continuous115, Continuous200,
        Intermittent14, Intermittent28, Intermittent115, Intermittent200,
    ];

    /// <summary>The main cable between generator and battery: 2 % of the regulated voltage.</summary>
    /// <param name="regulated">More than nothing.</param>
    public static Outcome<AllowedDrop> MainCable(Voltage regulated) => regulated.Volts <= 0
        ? new Objection("The regulated voltage is more than 0 V.")
        : new AllowedDrop(
            "main-cable", regulated, Voltage.FromVolts(regulated.Volts * 0.02), Documents.PowerplantHandbook);

    /// <summary>Whether a drop is within the limit.</summary>
    public bool Allows(Voltage drop) => Math.Abs(drop.Volts) <= Greatest.Volts;

    private static AllowedDrop Continuous(int system, double greatest) => new(
        FormattableString.Invariant($"continuous-{system}"),
        Voltage.FromVolts(system), Voltage.FromVolts(greatest), Documents.AircraftDrop);

    private static AllowedDrop Intermittent(int system, double greatest) => new(
        FormattableString.Invariant($"intermittent-{system}"),
        Voltage.FromVolts(system), Voltage.FromVolts(greatest), Documents.AircraftDropIntermittent);
}

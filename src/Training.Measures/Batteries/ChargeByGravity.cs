using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>
/// State of charge from the gravity of a cell, TM 5-1185 Table II. Its numbered rows lie exactly on a straight line:
/// 25 % for each 0.030 below 1.280. The line ends at 1.160, the row that is printed without a number, "almost
/// discharged". Gravity shows how full a battery is, not how much it can still hold (DOE-HDBK-1084-95).
/// </summary>
public static class ChargeByGravity
{
    private const double Full = 1.280;
    private const double Empty = 1.160;

    /// <summary>The rows as they are printed.</summary>
    public static IReadOnlyList<GravityRow> Table { get; } =
    [
        new(SpecificGravity.FromValue(1.280), 100, "fully charged"),
        new(SpecificGravity.FromValue(1.250), 75, "three quarters charged"),
        new(SpecificGravity.FromValue(1.220), 50, "half charged"),
        new(SpecificGravity.FromValue(1.190), 25, "a quarter charged"),
        new(SpecificGravity.FromValue(1.160), null, "almost discharged"),
        new(SpecificGravity.FromValue(1.130), null, "discharged"),
    ];

    /// <summary>The charge that a gravity stands for.</summary>
    /// <param name="gravity">Corrected to 80 °F. Outside 1.000 to 1.350 it is no battery acid and is refused.</param>
    /// <returns>0 % at 1.160 and below, 100 % at 1.280 and above.</returns>
    public static Outcome<Worked<Percent>> Of(CorrectedGravity gravity)
    {
        var value = gravity.At80F.Value;
        if (value is < 1.000 or > 1.350)
            return new Objection(
                "The acid of a vehicle's battery lies between 1.000 and 1.350: read the hydrometer again.");
        var within = Math.Clamp(value, Empty, Full);
        // To nine places: 1.250 is 75 % and no binary fraction less, or a battery right at a limit would fall below it.
        var charge = Math.Clamp(Math.Round(100 - 25 * (Full - within) / 0.030, 9), 0, 100);
        return new Worked<Percent>(Percent.FromValue(charge), new([Line(within, charge)]));
    }

    /// <summary>The gravity at 80 °F that a charge stands for.</summary>
    /// <param name="charge">From 0 % to 100 %.</param>
    public static Outcome<SpecificGravity> GravityAt(Percent charge) => charge.Value > 100
        ? new Objection("A battery is never charged to more than 100 %.")
        : SpecificGravity.FromValue(Full - 0.030 * (100 - charge.Value) / 25);

    private static WorkingLine Line(double gravity, double charge) => new(
        gravity is Empty or Full ? "State of charge, at the end of the table" : "State of charge from gravity",
        new("SoC", charge, "%", 1),
        "100 − 25 × ( 1.280 − SG₈₀ ) ÷ 0.030",
        [new("SG₈₀", gravity, "", 4)],
        Documents.ChargeByGravity);
}

/// <summary>A row of TM 5-1185 Table II.</summary>
/// <param name="Gravity">At 80 °F.</param>
/// <param name="Charge">In percent; null where the row is printed in words alone.</param>
/// <param name="Words">What the row says.</param>
public sealed record GravityRow(SpecificGravity Gravity, double? Charge, string Words);

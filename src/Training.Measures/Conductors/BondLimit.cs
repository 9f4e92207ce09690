using Training.Measures.Quantities;
using Training.Measures.Sources;

namespace Training.Measures.Conductors;

/// <summary>
/// A published limit for the resistance of a ground or bond. They are limits for different places, so a question
/// names the one that it is judged by.
/// </summary>
/// <param name="Id">The name by which a question calls it.</param>
/// <param name="Greatest">The limit.</param>
/// <param name="MayBeReached">Whether the limit itself still passes: "at most" and not "less than".</param>
/// <param name="For">What it is a limit for.</param>
/// <param name="Source">Where it is printed.</param>
public sealed record BondLimit(string Id, Resistance Greatest, bool MayBeReached, Phrase For, Source Source)
{
    /// <summary>Each connection of a bonding jumper: at most 0.003 Ω.</summary>
    public static BondLimit JumperConnection { get; } = new(
        "jumper-connection", Resistance.FromOhms(0.003), true, "each connection of a bonding jumper",
        Documents.BondingJumper);

    /// <summary>Equipment bonded to the structure: less than 2.5 mΩ.</summary>
    public static BondLimit Equipment { get; } = new(
        "equipment", Resistance.FromOhms(0.0025), false, "equipment bonded to the structure", Documents.EquipmentBond);

    /// <summary>From the battery's or generator's ground to a device's ground terminal: at most 0.005 Ω.</summary>
    public static BondLimit GroundReturn { get; } = new(
        "ground-return", Resistance.FromOhms(0.005), true,
        "the way from a device's ground terminal to the ground of the battery or generator",
        Documents.PowerplantHandbook);

    /// <summary>The three limits.</summary>
    public static IReadOnlyList<BondLimit> All { get; } = [JumperConnection, Equipment, GroundReturn];

    /// <summary>A seat that was cleaned to bare metal is finished again within this time, AC 43.13-1B 11-189.</summary>
    public static Time RefinishWithin { get; } = Time.FromDays(1);

    /// <summary>Whether a resistance passes.</summary>
    public bool Allows(Resistance measured) =>
        MayBeReached ? measured.Ohms <= Greatest.Ohms : measured.Ohms < Greatest.Ohms;
}

using Training.Measures.Quantities;
using Training.Measures.Workings;

namespace Training.Measures.Conductors;

/// <summary>
/// The smallest cross-section of IEC 60228 class 5 that keeps a drop within its limit. It says nothing of the current
/// that the insulation bears: that stands in the cable's own data.
/// </summary>
public static class SmallestSection
{
    /// <summary>The smallest section, with the sum of its drop.</summary>
    /// <param name="length">The length that the current passes.</param>
    /// <param name="copper">The temperature of the copper.</param>
    /// <param name="current">The current.</param>
    /// <param name="basis">What the resistance at 20 °C is taken from; a table's basis is on the safe side.</param>
    /// <param name="temperature">The rule that carries it to the copper's temperature.</param>
    /// <param name="greatestDrop">The drop that is allowed.</param>
    public static Outcome<Worked<CrossSection>> For(
        Length length, Temperature copper, Current current, ResistanceBasis basis, CopperTemperature temperature,
        Voltage greatestDrop)
    {
        foreach (var row in ClassFive.Table)
        {
            var drop = VoltageDrop.Along(new(length, row.Section, copper), basis, temperature, current);
            if (!drop.IsOk)
                return drop.Objection;
            if (drop.Value.Value.Volts <= greatestDrop.Volts)
                return new Worked<CrossSection>(row.Section, drop.Value.Working);
        }
        return new Objection("Even 95 mm² drops more than is allowed: shorten the run or share the load out.");
    }
}

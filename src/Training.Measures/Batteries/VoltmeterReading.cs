using System.Globalization;
using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Batteries;

/// <summary>What a voltmeter showed on one 12 V battery.</summary>
/// <param name="Shown">The voltage, red clip on the terminal marked plus.</param>
/// <param name="RestedFor">How long everything had been off, after the lamps had been on for 15 s.</param>
public sealed record VoltmeterReading(Voltage Shown, Time RestedFor)
{
    private static readonly Voltage Damaging = Voltage.FromVolts(10.5);

    /// <summary>Decides on the battery by the rows of TM 5-3805-262-20.</summary>
    public Outcome<BatteryDecision> Decide()
    {
        if (Shown.Volts < 0)
            return Stop(
                "polarity", "The voltage is below zero: the clips or the battery stand the wrong way round.",
                Documents.ChargeByVoltage);
        if (RestedFor.Hours < ChargeByVoltage.RestBeforeReading.Hours)
            return Stop(
                "not-rested", "Lamps on for 15 s, off, wait 3 min, then read: this battery has not rested.",
                Documents.ChargeByVoltage);
        return ChargeByVoltage.Of(Shown).Then<BatteryDecision>(charge => Weigh(charge));
    }

    private BatteryDecision Weigh(Worked<Percent> charge)
    {
        if (Shown.Volts < Damaging.Volts)
            return Stop(
                "deeply-discharged", "Less than 10.5 V damages a battery: have it charged and load-tested.",
                Documents.DeepDischarge, charge.Working);
        var percent = charge.Value.Value.ToString("F0", CultureInfo.InvariantCulture);
        return Shown.Volts < ChargeByVoltage.Accepted.Volts
            ? new(
                BatteryVerdict.Charge,
                [
                    new("voltage-low", $"Below 12.4 V ({percent} %): charge the battery and load-test it.",
                        Documents.ChargeByVoltage),
                ],
                charge.Working)
            : new(
                BatteryVerdict.Fit,
                [new("voltage-good", $"12.4 V or more ({percent} %): accepted.", Documents.ChargeByVoltage)],
                charge.Working);
    }

    private static BatteryDecision Stop(string code, Phrase sentence, Source source, Working? working = null) =>
        new(BatteryVerdict.Stop, [new(code, sentence, source)], working ?? new([]));
}

using System.ComponentModel;

namespace Training.Measures.Sources;

/// <summary>The documents that the tables and formulas come from, each named once.</summary>
public static class Documents
{
    private static readonly Phrase Restated = "read in a page that restates it, not in the document itself";

    /// <summary>Specific gravity and state of charge.</summary>
    public static Source ChargeByGravity { get; } =
        new("TM 5-1185", "Table II", SourceKind.Published);

    /// <summary>Freezing point of electrolyte.</summary>
    public static Source FreezingPoints { get; } =
        new("TM 5-1185", "Table III", SourceKind.Published, "two columns, paired as they stand in the scan");

    /// <summary>Loss in storage, and when to charge again.</summary>
    public static Source Storage { get; } = new("TM 5-1185", "storage", SourceKind.Published);

    /// <summary>Cranking power in the cold.</summary>
    public static Source ColdCranking { get; } = new("TM 5-1185", "cranking power", SourceKind.Published);

    /// <summary>Correction of a hydrometer reading by 0.004 for each 10 °F.</summary>
    public static Source CorrectionByTen { get; } =
        new("TM 5-3895-349-14P", "battery, hydrometer test", SourceKind.Published);

    /// <summary>Correction of a hydrometer reading by 0.001 for each 3 °F.</summary>
    public static Source CorrectionByThree { get; } =
        new("US Navy training manual 14113", "Correcting Specific Gravity", SourceKind.Published);

    /// <summary>Charge one hour after water was added, then read.</summary>
    public static Source WaterAdded { get; } = new("US Navy training manual 14113", "adding water", SourceKind.Published);

    /// <summary>Voltage at the end of charging, 2.4 V to 2.6 V a cell.</summary>
    public static Source FinishingCharge { get; } =
        new("US Navy training manual 14113", "finishing charge", SourceKind.Published);

    /// <summary>Resting voltage and charge, and how to read it.</summary>
    public static Source ChargeByVoltage { get; } = new("TM 5-3805-262-20", "para 5-9", SourceKind.Published);

    /// <summary>Less than 10.5 V damages a battery.</summary>
    public static Source DeepDischarge { get; } = new("TM 9-6140-200-14", "para 2-4", SourceKind.Published);

    /// <summary>Cells more than 0.020 apart.</summary>
    public static Source SpreadOfTwenty { get; } = new("TM 55-2210-224-12", "para 4-30", SourceKind.Published);

    /// <summary>Cells of a charged battery more than 0.025 apart.</summary>
    public static Source SpreadOfTwentyFive { get; } = new("TM 9-6140-200-14", "para 4-7", SourceKind.Published);

    /// <summary>Cells more than 0.050 apart; TM 5-3740-214-14 prints the same figure.</summary>
    public static Source SpreadOfFifty { get; } =
        new("TM 5-3895-349-14P", "battery, hydrometer test", SourceKind.Published);

    /// <summary>Gravity falls in proportion to the ampere-hours drawn.</summary>
    public static Source ChargeDrawn { get; } = new("DOE-HDBK-1084-95", "p. 17 and Fig. 8", SourceKind.Published);

    /// <summary>Standard copper: resistivity and temperature coefficient.</summary>
    public static Source StandardCopper { get; } =
        new("NBS Handbook 100 (1966); IEC 60028", "standard annealed copper", SourceKind.Published, Restated);

    /// <summary>Largest resistance of flexible conductors.</summary>
    public static Source ClassFive { get; } = new("IEC 60228", "class 5", SourceKind.Published, Restated);

    /// <summary>The temperature factors printed with tables of conductor resistance.</summary>
    public static Source ConductorTemperature { get; } =
        new("IEC 60228", "temperature correction factors", SourceKind.Published, Restated);

    /// <summary>Aircraft wiring: the temperature formula for copper and aluminium.</summary>
    public static Source AircraftTemperature { get; } =
        new("FAA AC 43.13-1B CHG 1", "para 11-66", SourceKind.Published);

    /// <summary>Aircraft wiring: voltage drop by resistance, length and current.</summary>
    public static Source AircraftDrop { get; } =
        new("FAA AC 43.13-1B CHG 1", "tables 11-7 and 11-8", SourceKind.Published);

    /// <summary>Aircraft wiring: drops allowed for loads that run for a short time only.</summary>
    public static Source AircraftDropIntermittent { get; } =
        new("FAA AC 43.13-1B CHG 1", "table 11-6, intermittent", SourceKind.Memory);

    /// <summary>Aircraft wiring: resistance and current of tin-plated copper wires.</summary>
    public static Source AircraftWires { get; } = new("FAA AC 43.13-1B CHG 1", "table 11-9", SourceKind.Published);

    /// <summary>Bonding jumper: each connection.</summary>
    public static Source BondingJumper { get; } = new("FAA AC 43.13-1B", "para 11-189", SourceKind.Published);

    /// <summary>Bonded equipment.</summary>
    public static Source EquipmentBond { get; } = new("FAA AC 43.13-1B", "para 11-188", SourceKind.Published);

    /// <summary>Main cable drop and ground return.</summary>
    public static Source PowerplantHandbook { get; } =
        new("FAA-H-8083-32", "wire size and ground return", SourceKind.Published, Restated);

    /// <summary>Blade fuses of types C, E and F.</summary>
    public static Source BladeFuses { get; } =
        new("ISO 8820-3:2015", "blade fuses, ratings and colours", SourceKind.Published, Restated);

    /// <summary>Ratings of large blade fuses.</summary>
    public static Source LargeBladeFuses { get; } =
        new("ISO 8820-3:2015", "large blade fuses, ratings", SourceKind.Memory);

    /// <summary>A fuse carries no more than 80 % of its rating for long.</summary>
    public static Source EightyPercent { get; } =
        Ours("House rule: 80 % of the fuse for a lasting load", SourceKind.Memory, "no standard found");

    /// <summary>Fuse against the current that a conductor may carry, on boats.</summary>
    public static Source BoatFuses { get; } = new("33 CFR", "183.455", SourceKind.Published);

    /// <summary>The current that a conductor may carry, on boats.</summary>
    public static Source BoatConductors { get; } = new("33 CFR", "183.425, Table 5", SourceKind.Published);

    /// <summary>Fuses of trailing cables.</summary>
    public static Source TrailingCables { get; } = new("30 CFR", "75.601-3", SourceKind.Published);

    /// <summary>Ohm's and Joule's laws.</summary>
    public static Source CircuitLaws { get; } = Ours("Ohm's and Joule's laws", SourceKind.Published, "physics");

    /// <summary>Plain arithmetic on the numbers given.</summary>
    public static Source Arithmetic { get; } = Ours("Arithmetic", SourceKind.Published, "no figure of its own");

    /// <summary>A straight line between two rows of a table.</summary>
    public static Source BetweenRows { get; } =
        Ours("Straight line between two rows", SourceKind.Practice);

    /// <summary>A capacity holds for a slow discharge only.</summary>
    public static Source SlowDischarge { get; } =
        Ours("Capacity is stated for a discharge over 20 h", SourceKind.Memory);

    // What no document is the source of is called by words of ours, which are translated; a document keeps its name.
    private static Source Ours([Localizable(true)] string name, SourceKind kind, Phrase? note = null) =>
        new(name, "", kind, note);
}

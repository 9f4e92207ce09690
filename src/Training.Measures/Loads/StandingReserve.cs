using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Workings;

namespace Training.Measures.Loads;

/// <summary>
/// What a battery keeps while loads stay on with the engine off. Charge falls with the ampere-hours drawn
/// (DOE-HDBK-1084-95). The printed capacity holds for a slow discharge; a load that would empty the battery in less
/// than 20 h leaves less than this sum says, and the result says so.
/// </summary>
/// <param name="Charge">The charge that is left.</param>
/// <param name="Share">The same as a part of the capacity.</param>
/// <param name="IsOptimistic">Whether the load is too great for the printed capacity to hold.</param>
public sealed record StandingReserve(Charge Charge, Percent Share, bool IsOptimistic)
{
    private const double SlowHours = 20;

    /// <summary>What is left after standing; nothing, once the battery is empty.</summary>
    /// <param name="capacity">The capacity printed on the battery; more than nothing.</param>
    /// <param name="start">The state of charge at the start, to 100 %.</param>
    /// <param name="load">The current that stays on; not below nothing.</param>
    /// <param name="standing">How long.</param>
    public static Outcome<Worked<StandingReserve>> After(Charge capacity, Percent start, Current load, Time standing)
    {
        if (ObjectionTo(capacity, start, load) is { } objection)
            return objection;
        var held = capacity.AmpereHours * start.Value / 100;
        var drawn = load.Amperes * standing.Hours;
        var left = Math.Max(0, held - drawn);
        var share = Math.Min(100, 100 * left / capacity.AmpereHours);
        var optimistic = load.Amperes > capacity.AmpereHours / SlowHours;
        return new Worked<StandingReserve>(
            new(Charge.FromAmpereHours(left), Percent.FromValue(share), optimistic),
            new([
                Held(capacity, start, held),
                left > 0 ? Kept(held, load, standing, left) : Empty(drawn),
                Part(left, capacity, share, optimistic),
            ]));
    }

    /// <summary>How long the loads may stay on until a charge is reached.</summary>
    /// <param name="capacity">The capacity printed on the battery; more than nothing.</param>
    /// <param name="start">The state of charge at the start, to 100 %.</param>
    /// <param name="load">The current that stays on; more than nothing.</param>
    /// <param name="down">The charge that is to be left, no more than the start.</param>
    public static Outcome<Worked<Time>> Until(Charge capacity, Percent start, Current load, Percent down)
    {
        if (ObjectionTo(capacity, start, load) is { } objection)
            return objection;
        if (load.Amperes == 0)
            return new Objection("Without a load the battery loses by itself only: see what it loses in storage.");
        if (down.Value > start.Value)
            return new Objection("The charge that is to be left cannot be more than the charge at the start.");
        var hours = capacity.AmpereHours * (start.Value - down.Value) / 100 / load.Amperes;
        return Time.Of(hours).Then<Worked<Time>>(time => new Worked<Time>(time, new(
        [
            new(
                "How long until that charge is reached",
                new("t", hours, "h"),
                "C × ( s₁ − s₂ ) ÷ 100 ÷ I",
                [
                    new("C", capacity.AmpereHours, "Ah"), new("s₁", start.Value, "%"), new("s₂", down.Value, "%"),
                    new("I", load.Amperes, "A"),
                ],
                Documents.ChargeDrawn),
        ])));
    }

    private static Objection? ObjectionTo(Charge capacity, Percent start, Current load)
    {
        if (capacity.AmpereHours <= 0)
            return new("The capacity of a battery is more than 0 Ah: read it on the battery.");
        if (start.Value > 100)
            return new("A battery is never charged to more than 100 %.");
        return load.Amperes < 0 ? new("A load cannot draw less than 0 A.") : null;
    }

    private static WorkingLine Held(Charge capacity, Percent start, double held) => new(
        "Charge at the start",
        new("Q₁", held, "Ah"),
        "C × s ÷ 100",
        [new("C", capacity.AmpereHours, "Ah"), new("s", start.Value, "%")],
        Documents.Arithmetic);

    private static WorkingLine Kept(double held, Current load, Time standing, double left) => new(
        "Charge after standing",
        new("Q₂", left, "Ah"),
        "Q₁ − I × t",
        [new("Q₁", held, "Ah"), new("I", load.Amperes, "A"), new("t", standing.Hours, "h")],
        Documents.ChargeDrawn);

    private static WorkingLine Empty(double drawn) => new(
        "The loads would draw more than there is: the battery is empty",
        new("Q₂", 0, "Ah"),
        "",
        [new("I×t", drawn, "Ah")],
        Documents.ChargeDrawn);

    private static WorkingLine Part(double left, Charge capacity, double share, bool optimistic) => new(
        optimistic ? "As a part of the capacity; so great a load leaves less" : "As a part of the capacity",
        new("s₂", share, "%", 1),
        "100 × Q₂ ÷ C",
        [new("Q₂", left, "Ah"), new("C", capacity.AmpereHours, "Ah")],
        optimistic ? Documents.SlowDischarge : Documents.Arithmetic);
}

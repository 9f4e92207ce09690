using NodaTime;
using Training.Records.Asking;
using Training.Sequencing;
using Training.Sequencing.Procedures;

namespace Training.Records.Observing;

/// <summary>What holds of every tap, whether the run's own examiner made it or one who observes beside.</summary>
internal static class Tapping
{
    // A device's clock runs a little differently from the server's.
    private const decimal MostSecondsAhead = 5;

    public static Refusal HasEnded { get; } = new("The run has ended; no step is added or taken back any more.");

    /// <summary>What can be tapped: the steps for the kind of vehicle, and what is never right.</summary>
    public static IEnumerable<OfferedView> Offered(Procedure procedure, VariantId? variant) =>
        procedure.StepsFor(variant).Select(step => new OfferedView(step.Id, step.Do, step.IsWait))
            .Concat(procedure.Decoys.Select(decoy => new OfferedView(decoy.Id, decoy.Do, false)));

    /// <summary>Why a new tap is not taken, or null.</summary>
    /// <param name="tap">The tap.</param>
    /// <param name="last">The last tap that stands, if any.</param>
    /// <param name="elapsed">How long the run has lasted by the server's clock.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle.</param>
    public static Refusal? WhyNot(NewTap tap, ITap? last, NodaTime.Duration elapsed, Procedure procedure, VariantId? variant)
    {
        if (tap.Id == Guid.Empty) return new("A tap needs an id of its own; load the page again.");
        if (!Offered(procedure, variant).Any(known => known.Id == tap.Step))
            return new($"“{tap.Step}” is nothing that can be done in this job on this kind of vehicle.");
        if (tap.Seconds < (last?.Seconds ?? 0)) return new("A step cannot be done before the one that was tapped before it.");
        return tap.Seconds > Seconds(elapsed) + MostSecondsAhead
            ? new("The tap's time lies ahead of the server's clock; check the device's clock.")
            : null;
    }

    /// <summary>Why a tap is not taken back, or null: only the last one that stands is.</summary>
    public static Refusal? WhyNotBack(ITap tap, ITap last) =>
        tap == last ? null : new("Only the last tap can be taken back; take back the later ones first.");

    public static decimal Seconds(NodaTime.Duration length) => (decimal)length.TotalTicks / NodaConstants.TicksPerSecond;
}

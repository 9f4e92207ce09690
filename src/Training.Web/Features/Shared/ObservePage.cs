using Training.Records.Asking;
using Training.Records.Observing;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Shared;

/// <summary>How far a run has come, for the script of the page beside the vehicle.</summary>
/// <param name="ElapsedSeconds">Seconds since its start, by the server's clock.</param>
/// <param name="IsUnderWay">Whether taps are still taken.</param>
public sealed record RunProgress(decimal ElapsedSeconds, bool IsUnderWay);

/// <summary>The page beside the vehicle.</summary>
/// <param name="Run">The run.</param>
/// <param name="Offered">What can be tapped.</param>
/// <param name="Taps">What was tapped.</param>
/// <param name="ElapsedSeconds">Seconds since the start of the run, by the server's clock.</param>
/// <param name="Decoys">What must not be done.</param>
public sealed record ObservePage(
    RunLine Run, IReadOnlyList<OfferedView> Offered, IReadOnlyList<TapView> Taps, decimal ElapsedSeconds, IReadOnlySet<StepId> Decoys)
{
    /// <summary>Whether it is observed beside the run's own examiner.</summary>
    public bool IsBeside { get; init; }

    /// <summary>The address of the page; its forms post below it.</summary>
    public string Address => IsBeside ? $"/runs/{Run.Id}/beside" : $"/runs/{Run.Id}";

    /// <summary>The id of the next tap where no script gives it one: the same page sent twice taps once.</summary>
    public Guid NextTap { get; } = Guid.NewGuid();

    /// <summary>The steps of the job, as listed.</summary>
    public IEnumerable<OfferedView> Steps => Offered.Where(offer => !Decoys.Contains(offer.Id));

    /// <summary>What must not be done.</summary>
    public IEnumerable<OfferedView> Wrongs => Offered.Where(offer => Decoys.Contains(offer.Id));

    /// <summary>The taps that stand, with their numbers in order of work.</summary>
    public IReadOnlyList<TapView> Standing { get; } = [.. Taps.Where(tap => !tap.IsUndone)];

    /// <summary>The last tap that stands, the one that can be taken back.</summary>
    public TapView? Last => Standing.Count == 0 ? null : Standing[^1];

    /// <summary>All taps, each with how many stand up to it: what was taken back has no number of its own.</summary>
    public IEnumerable<(TapView Tap, int Place)> Numbered => Taps.Select(tap => (tap, Standing.Count(other => other.Number <= tap.Number)));

    /// <summary>The places at which something stands in the order of work, from 1; empty where it was not done.</summary>
    /// <param name="step">The step or decoy.</param>
    public IReadOnlyList<int> PlacesOf(StepId step) =>
        [.. Standing.Index().Where(item => item.Item.Step == step).Select(item => item.Index + 1)];

    /// <summary>A time on the clock of the run: minutes and seconds.</summary>
    /// <param name="seconds">Seconds since the start.</param>
    public static string Clock(decimal seconds)
    {
        var whole = (int)decimal.Floor(seconds);
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{whole / 60:00}:{whole % 60:00}");
    }
}

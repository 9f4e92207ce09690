using Training.Records.Asking;
using Training.Records.Observing;
using Training.Sequencing.Procedures;

namespace Training.Web.Features.Runs;

/// <summary>A run that has ended, or that somebody else observes.</summary>
/// <param name="View">The run.</param>
/// <param name="IsMine">Whether the reader is its examiner.</param>
public sealed record RunPage(RunView View, bool IsMine);

/// <summary>How far a run has come, for the script of the page beside the vehicle.</summary>
/// <param name="ElapsedSeconds">Seconds since its start, by the server's clock.</param>
/// <param name="IsUnderWay">Whether taps are still taken.</param>
public sealed record RunProgress(decimal ElapsedSeconds, bool IsUnderWay);

/// <summary>The page beside the vehicle.</summary>
/// <param name="View">The run.</param>
/// <param name="Decoys">What must not be done.</param>
public sealed record ObservePage(RunView View, IReadOnlySet<StepId> Decoys)
{
    /// <summary>The id of the next tap where no script gives it one: the same page sent twice taps once.</summary>
    public Guid NextTap { get; } = Guid.NewGuid();

    /// <summary>The steps of the job, as listed.</summary>
    public IEnumerable<OfferedView> Steps => View.Offered.Where(offer => !Decoys.Contains(offer.Id));

    /// <summary>What must not be done.</summary>
    public IEnumerable<OfferedView> Wrongs => View.Offered.Where(offer => Decoys.Contains(offer.Id));

    /// <summary>The taps that stand, with their numbers in order of work.</summary>
    public IReadOnlyList<TapView> Standing { get; } = [.. View.Taps.Where(tap => !tap.IsUndone)];

    /// <summary>The last tap that stands, the one that can be taken back.</summary>
    public TapView? Last => Standing.Count == 0 ? null : Standing[^1];

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

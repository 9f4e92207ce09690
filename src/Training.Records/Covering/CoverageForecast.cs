using NodaTime;

namespace Training.Records.Covering;

/// <summary>How many people hold a competency from a day on.</summary>
/// <param name="From">The day.</param>
/// <param name="People">How many.</param>
public readonly record struct CoverageStep(LocalDate From, int People);

/// <summary>How many people hold a competency on each day of a time to come, if nobody is sent, confirmed or suspended. Pure.</summary>
public static class CoverageForecast
{
    /// <summary>The number on the first day, and each day on which it falls.</summary>
    /// <param name="lastDays">The last day of each record that holds on the first day.</param>
    /// <param name="today">The first day.</param>
    /// <param name="lastDay">The last day.</param>
    public static IReadOnlyList<CoverageStep> Steps(IEnumerable<LocalDate> lastDays, LocalDate today, LocalDate lastDay)
    {
        ArgumentNullException.ThrowIfNull(lastDays);
        var ends = lastDays.Where(end => end >= today).Order().ToList();
        var steps = new List<CoverageStep> { new(today, ends.Count) };
        foreach (var (index, end) in ends.Index())
        {
            if (end >= lastDay) break;
            var step = new CoverageStep(end.PlusDays(1), ends.Count - index - 1);
            if (steps[^1].From == step.From) steps[^1] = step;
            else steps.Add(step);
        }

        return steps;
    }

    /// <summary>The first day on which fewer hold it than are needed; null where that does not happen.</summary>
    /// <param name="steps">The number on each day.</param>
    /// <param name="need">How many are needed.</param>
    public static LocalDate? FirstBelow(IReadOnlyList<CoverageStep> steps, int need)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return steps.Where(step => step.People < need).Select(step => (LocalDate?)step.From).FirstOrDefault();
    }
}

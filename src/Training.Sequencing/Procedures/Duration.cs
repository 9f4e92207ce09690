using System.Globalization;

namespace Training.Sequencing.Procedures;

/// <summary>
/// A length of time: finite, never negative, exact to a nanosecond. What people state is at most
/// <see cref="Longest"/>; the clock of a replay, which adds many of them up, may run further.
/// Kept in decimal so that sums of stated times are exact and a gap of just 90 s is never too short by rounding.
/// </summary>
public readonly record struct Duration : IComparable<Duration>
{
    private Duration(decimal seconds) => Seconds = seconds;

    /// <summary>No time at all.</summary>
    public static Duration Zero => default;

    /// <summary>The longest time that the engine takes: 1 000 000 000 s, some 31 years.</summary>
    public static Duration Longest { get; } = new(1_000_000_000m);

    /// <summary>The length in seconds, the SI unit.</summary>
    public decimal Seconds { get; }

    /// <summary>Reads a number of seconds.</summary>
    /// <param name="seconds">The seconds; rounded to a nanosecond.</param>
    /// <param name="duration">The length of time where the number is one.</param>
    /// <returns>False where the number is negative, not finite or above <see cref="Longest"/>.</returns>
    public static bool TryFromSeconds(double seconds, out Duration duration)
    {
        duration = default;
        if (!double.IsFinite(seconds) || seconds < 0 || seconds > (double)Longest.Seconds) return false;
        duration = new(Math.Round((decimal)seconds, 9));
        return true;
    }

    /// <summary>Reads a number of seconds.</summary>
    /// <param name="seconds">The seconds; rounded to a nanosecond.</param>
    /// <param name="duration">The length of time where the number is one.</param>
    /// <returns>False where the number is negative or above <see cref="Longest"/>.</returns>
    public static bool TryFromSeconds(decimal seconds, out Duration duration)
    {
        duration = default;
        if (seconds < 0 || seconds > Longest.Seconds) return false;
        duration = new(Math.Round(seconds, 9));
        return true;
    }

    /// <summary>A length of time that the code itself knows to be sound.</summary>
    /// <param name="seconds">The seconds, from 0 to <see cref="Longest"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside that range: a fault of ours.</exception>
    public static Duration FromSeconds(decimal seconds) =>
        TryFromSeconds(seconds, out var duration)
            ? duration
            : throw new ArgumentOutOfRangeException(nameof(seconds), seconds, "A duration lies between 0 s and 1e9 s.");

    /// <summary>A time on the clock of a replay: a sum of sound durations, which may pass <see cref="Longest"/>.</summary>
    internal static Duration OnClock(decimal seconds) => new(seconds);

    /// <summary>
    /// Reads a number and an SI symbol with a space between them: <c>90 s</c>, <c>1.5 min</c>, <c>2 h</c>
    /// (SI Brochure, table 8 for <c>min</c> and <c>h</c>). The decimal mark is a point.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="duration">The length of time where the text is one.</param>
    /// <returns>False where the text is no duration.</returns>
    public static bool TryParse(string? text, out Duration duration)
    {
        duration = default;
        if (text is null || text.Length > 40) return false;
        var end = text.IndexOf(' ', StringComparison.Ordinal);
        if (end <= 0) return false;
        if (!decimal.TryParse(text.AsSpan(0, end), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out var number)) return false;
        decimal? unit = text[(end + 1)..] switch { "s" => 1m, "min" => 60m, "h" => 3600m, "ms" => 0.001m, _ => null };
        return unit is { } factor && number <= Longest.Seconds && TryFromSeconds(number * factor, out duration);
    }

    /// <inheritdoc/>
    public int CompareTo(Duration other) => Seconds.CompareTo(other.Seconds);

    /// <summary>Whether one time is shorter than another.</summary>
    public static bool operator <(Duration left, Duration right) => left.Seconds < right.Seconds;

    /// <summary>Whether one time is longer than another.</summary>
    public static bool operator >(Duration left, Duration right) => left.Seconds > right.Seconds;

    /// <summary>Whether one time is no longer than another.</summary>
    public static bool operator <=(Duration left, Duration right) => left.Seconds <= right.Seconds;

    /// <summary>Whether one time is no shorter than another.</summary>
    public static bool operator >=(Duration left, Duration right) => left.Seconds >= right.Seconds;

    /// <summary>The length with its symbol, <c>90 s</c>, in the invariant culture.</summary>
    public override string ToString() => Seconds.ToString("0.#########", CultureInfo.InvariantCulture) + " s";
}

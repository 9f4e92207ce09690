using NodaTime.Text;

namespace Training.Web.Features.Shared;

/// <summary>A day that a page is asked for in its address, as <c>2026-11-25</c>. Days that nobody lives to see are none, so that a sum with one fits.</summary>
public static class DayAsked
{
    private const int FirstYear = 1900;
    private const int LastYear = 2199;

    /// <summary>Reads the day.</summary>
    /// <param name="text">The text; null or empty for no day.</param>
    /// <param name="day">The day; null for none.</param>
    /// <returns>False where the text is no day.</returns>
    public static bool TryRead(string? text, out NodaTime.LocalDate? day)
    {
        day = null;
        if (string.IsNullOrWhiteSpace(text)) return true;
        var read = LocalDatePattern.Iso.Parse(text.Trim());
        if (!read.Success || read.Value.Year is < FirstYear or > LastYear) return false;
        day = read.Value;
        return true;
    }

    /// <summary>A day as a form and an address carry it.</summary>
    /// <param name="day">The day.</param>
    public static string Written(NodaTime.LocalDate day) => LocalDatePattern.Iso.Format(day);
}

using System.Globalization;
using Training.Web.Drawings;

namespace Training.Web.Features.WallCharts;

/// <summary>
/// What stands beside the plan of a wall chart, as much of it as one sheet holds: first come the cautions, and what never;
/// the reasons where there is room. Room is reckoned by the number of letters; the tests hold every chart against a browser.
/// </summary>
/// <param name="Cautions">The cautions, each with what is told of it.</param>
/// <param name="Never">What must never be done, each with what is told of it.</param>
/// <param name="Points">The size of the letters in points.</param>
public sealed record ChartSide(IReadOnlyList<ChartLine> Cautions, IReadOnlyList<ChartLine> Never, double Points)
{
    private const double SheetWidth = 281;
    private const double Gap = 5;

    // The smallest letters that a sheet on a wall may have, and what is still easily read where there is a choice.
    private const double Smallest = 9;
    private const double Readable = 10;

    // How much of a column is lost where an entry is kept together, and by letters that are wider than most.
    private const double Filled = 0.92;

    // In letters.
    private const double HalfAWord = 2.8;
    private const double CrossWidth = 2.5;

    private static readonly double[] Sizes = [13, 12, 11, 10, 9.5, Smallest];

    /// <summary>The size as the style sheet names it.</summary>
    public string Style => "chart-letters-" + (Points * 10).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>Takes as much as there is room for beside a plan.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="planWidth">How wide the plan is, in mm.</param>
    /// <param name="language">The language, for the width and height of its letters.</param>
    public static ChartSide Beside(WallChart chart, double planWidth, string language)
    {
        ArgumentNullException.ThrowIfNull(chart);
        var column = (SheetWidth - planWidth - (2 * Gap)) / 2;
        var told = Told.WhatHappens;
        foreach (var more in Enum.GetValues<Told>())
            if (Fits(With(chart, told | more, Readable))) told |= more;
        return Sizes.Select(size => With(chart, told, size)).FirstOrDefault(Fits) ?? With(chart, told, Smallest);

        bool Fits(ChartSide side) => side.Height(column, Letters.In(language)) < 2 * WallChart.PlanHeight * Filled;
    }

    private static ChartSide With(WallChart chart, Told told, double points) => new(
        [.. chart.Cautions.Where(caution => caution.Word < SignalWord.Notice || told.HasFlag(Told.Notices))
            .Select(caution => new ChartLine(caution.Word, caution.Asks, Text(told.HasFlag(ReasonOf(caution.Word)) ? caution.Because : null, caution.Otherwise)))],
        [.. chart.Never.Select(never => new ChartLine(never.Word, never.Do, Text(
            told.HasFlag(Told.WhyNever) ? never.Because : null,
            told.HasFlag(Told.WhatNever) ? never.Otherwise : null)))],
        points);

    private static Told ReasonOf(SignalWord word) => word switch
    {
        SignalWord.Danger => Told.WhyDanger,
        SignalWord.Notice => Told.WhyNotice,
        _ => Told.WhyWarning,
    };

    private static string Text(string? because, string? otherwise) => string.Join(' ',
        new[] { because, otherwise }.Where(text => !string.IsNullOrWhiteSpace(text)).Select(text => text!.TrimEnd('.', '।') + "."));

    private double Height(double column, Letters letters)
    {
        var size = Points * 25.4 / 72;
        var inALine = column / (size * letters.Width);
        var lines = Cautions.Sum(line => Lines(line, inALine)) + Never.Sum(line => Lines(line, inALine - CrossWidth));
        var heads = Cautions.Select(line => line.Word).Distinct().Count() + 2;
        return (lines * size * letters.Height) + ((Cautions.Count + Never.Count) * 1.1) + (heads * 2 * size);

        // Lines break between words, which leaves half of one empty in each.
        static double Lines(ChartLine line, double letters) => Math.Ceiling((line.Head.Length + line.Text.Length + 2) / (letters - HalfAWord));
    }

    // What is told, in the order in which it is worth its room.
    [Flags]
    private enum Told
    {
        WhatHappens = 0,
        WhyNever = 1,
        WhyDanger = 2,
        Notices = 4,
        WhyWarning = 8,
        WhatNever = 16,
        WhyNotice = 32,
    }

    /// <summary>How wide a letter is on average and how high a line, against the size of the letters.</summary>
    private sealed record Letters(double Width, double Height)
    {
        public static Letters In(string language) => language == "hi" ? new(0.46, 1.45) : new(0.49, 1.25);
    }
}

/// <summary>A line beside the plan.</summary>
/// <param name="Word">Its signal word.</param>
/// <param name="Head">What stands in bold letters: the numbers of the steps, or what must never be done.</param>
/// <param name="Text">What is told of it; may be empty.</param>
public sealed record ChartLine(SignalWord Word, string Head, string Text);

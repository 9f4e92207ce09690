using System.Globalization;
using Microsoft.Extensions.Localization;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Web.Drawings;

namespace Training.Web.Features.Shared;

/// <summary>What is drawn of a reading: a picture for each instrument, and one note for all that is told.</summary>
public static class ReadingPictures
{
    /// <summary>The pictures in the order of the inputs; the note comes first.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="words">The words of the interface.</param>
    public static IReadOnlyList<InstrumentPicture> Of(ReadingView reading, IStringLocalizer<Words> words)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(words);
        var told = reading.Inputs.Where(input => input.On == Instrument.Told)
            .Select(input => new NoteRow(Title(input, words), input.Input.Print(CultureInfo.CurrentCulture))).ToList();
        var pictures = reading.Inputs.Where(input => input.On != Instrument.Told).Select(input => Picture(input, words));
        return told.Count == 0
            ? [.. pictures]
            : [new NotePicture(words["What is known"], string.Join("; ", told.Select(row => $"{row.Title}: {row.Number}")), told), .. pictures];
    }

    private static InstrumentPicture Picture(ReadingInputView view, IStringLocalizer<Words> words)
    {
        var (input, title) = (view.Input, Title(view, words));
        var decimals = Math.Max(Decimals(input.Division), Decimals(input.Number));
        var number = input.Number.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        var shown = input.Unit.Symbol.Length == 0 ? number : $"{number} {input.Unit.Symbol}";
        return view.On is Instrument.Multimeter or Instrument.ClampMeter
            ? new MeterPicture(title, words["The display shows {0}.", shown], number, input.Unit.Symbol, view.On == Instrument.ClampMeter)
            : new ScalePicture(
                title, Stands(view, words), input.Number, input.Division, input.Unit.Symbol, Decimals(input.Division), view.On == Instrument.Hydrometer);
    }

    // Whoever hears the picture has the scale to read as whoever sees it: the numbers beside the place and the lines between
    // them, never the value. A display shows digits to everybody.
    private static string Stands(ReadingInputView view, IStringLocalizer<Words> words)
    {
        var (division, isFloat) = (view.Input.Division, view.On == Instrument.Hydrometer);
        var lines = ScalePicture.LinesOfNumber(isFloat);
        var below = Math.Floor(view.Input.Number / (division * lines)) * lines;
        var past = (view.Input.Number / division - below).ToString("0.##", CultureInfo.CurrentCulture);
        return isFloat
            ? words["The surface of the liquid stands between {0} and {1} on the scale of the float, which are {2} parts apart: {3} parts from {0}.", Mark(below), Mark(below + lines), lines, past]
            : words["The column of the thermometer ends between {0} and {1} on the scale, which are {2} parts apart: {3} parts above {0}.", Mark(below), Mark(below + lines), lines, past];

        string Mark(decimal line) => (line * division).ToString($"F{Decimals(division)}", CultureInfo.InvariantCulture) + (view.Input.Unit.Symbol is { Length: > 0 } unit ? $" {unit}" : "");
    }

    private static string Title(ReadingInputView view, IStringLocalizer<Words> words) => view.Called ?? words.Say(view.Input.Input.Title);

    private static int Decimals(decimal number) => (number / 1.000000000000000000m).Scale;
}

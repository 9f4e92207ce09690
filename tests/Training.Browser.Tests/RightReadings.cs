using System.Globalization;
using System.Text.RegularExpressions;
using Training.Content.Scenarios;
using Training.Measures.Quantities;
using Training.Measures.Readings;

namespace Training.Browser.Tests;

/// <summary>
/// What a technician who knows the trade makes of the instruments on a page: the numbers are read from their text
/// alternatives, the sum is that of the measure.
/// </summary>
public sealed partial class RightReadings(Scenario scenario)
{
    /// <summary>The value to write down, and the place, from 0, of the decision to take.</summary>
    /// <param name="instruments">The text alternatives of the pictures, in order.</param>
    public (string Value, int Decision) Of(IReadOnlyList<string> instruments)
    {
        var task = scenario.Reading!;
        var question = task.Question;
        var told = question.Measure.Inputs.Where(input => task.InstrumentOf(input.Name) == Instrument.Told).ToList();
        var pictures = new Queue<string>(told.Count > 0 ? instruments.Skip(1) : instruments);
        var note = told.Count > 0 ? instruments[0].Split("; ") : [];
        var values = question.Measure.Inputs.ToDictionary(input => input.Name, input => Read(
            input, told.IndexOf(input) is var place and >= 0 ? note[place][(note[place].LastIndexOf(": ", StringComparison.Ordinal) + 2)..] : Shown(pictures.Dequeue())));
        var value = question.Measure.Work(values, question.Rules).Value.Value;
        var typed = value.ToString("0.############", CultureInfo.InvariantCulture) + " " + question.Measure.Answer.Kind.BaseUnit.Symbol;
        return (typed, question.Table is { } table ? int.Parse(table.For(value), CultureInfo.InvariantCulture) - 1 : -1);
    }

    private static double Read(MeasureInput input, string text) => TypedQuantity.Read(input.Kind, text.Replace('\u00A0', ' '), input.Unit).Value;

    private static string Shown(string words)
    {
        if (Scale().Match(words) is not { Success: true } scale) return Display().Match(words).Groups[1].Value;
        decimal Part(string name) => decimal.Parse(scale.Groups[name].Value, CultureInfo.InvariantCulture);
        var value = Part("below") + (Part("above") - Part("below")) / Part("parts") * Part("past");
        return $"{value.ToString(CultureInfo.InvariantCulture)} {scale.Groups["unit"].Value}".TrimEnd();
    }

    [GeneratedRegex(@"shows (-?[0-9.]+(?: [^ ]+?)?)\.$")]
    private static partial Regex Display();

    [GeneratedRegex(
        @"between (?<below>-?[0-9.]+)(?: (?<unit>\S+))? and (?<above>-?[0-9.]+)(?: \S+)? on the scale.* (?<parts>[0-9]+) parts apart: (?<past>[0-9.]+) parts ",
        RegexOptions.ExplicitCapture)]
    private static partial Regex Scale();
}

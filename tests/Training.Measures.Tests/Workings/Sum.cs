using System.Globalization;
using Training.Measures.Workings;

namespace Training.Measures.Tests.Workings;

/// <summary>Reckons a formula as it is written on paper, independently of the code that made it.</summary>
internal sealed class Sum
{
    private readonly string[] parts;
    private readonly IReadOnlyList<Term> terms;
    private int at;

    private Sum(WorkingLine line) => (parts, terms) = (line.Formula.Split(' '), line.Terms);

    public static double Of(WorkingLine line)
    {
        var sum = new Sum(line);
        var value = sum.Added();
        Assert.Equal(sum.parts.Length, sum.at);
        return value;
    }

    private double Added()
    {
        var value = Multiplied();
        while (Peek is "+" or "−")
            value = parts[at++] == "+" ? value + Multiplied() : value - Multiplied();
        return value;
    }

    private double Multiplied()
    {
        var value = One();
        while (Peek is "×" or "÷")
            value = parts[at++] == "×" ? value * One() : value / One();
        return value;
    }

    private double One()
    {
        var part = parts[at++];
        if (part == "(")
        {
            var value = Added();
            Assert.Equal(")", parts[at++]);
            return value;
        }
        return terms.SingleOrDefault(term => term.Symbol == part)?.Value
            ?? double.Parse(part, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }

    private string? Peek => at < parts.Length ? parts[at] : null;
}

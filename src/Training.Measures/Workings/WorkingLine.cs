using Training.Measures.Sources;

namespace Training.Measures.Workings;

/// <summary>One line of a sum as it would stand on paper.</summary>
/// <param name="Says">What the line finds, in a few words.</param>
/// <param name="Result">What comes out.</param>
/// <param name="Formula">
/// The right side in letters, its parts separated by single spaces, with × ÷ + − and brackets; empty where a table
/// is read.
/// </param>
/// <param name="Terms">The numbers that stand for the letters.</param>
/// <param name="Source">Where the formula or the row comes from.</param>
public sealed record WorkingLine(
    Phrase Says, Term Result, string Formula, IReadOnlyList<Term> Terms, Source Source)
{
    /// <summary>The line with letters: <c>R = ρ × l ÷ A</c>; a table's line has its letter alone.</summary>
    public string Letters => Formula.Length == 0 ? Result.Symbol : $"{Result.Symbol} = {Formula}";

    /// <summary>The line with numbers: <c>0.01724 Ω·mm²/m × 2 m ÷ 25 mm² = 0.001379 Ω</c>.</summary>
    /// <param name="format">The reader's number format.</param>
    public string Numbers(IFormatProvider format)
    {
        if (Formula.Length == 0)
        {
            var given = string.Join(", ", Terms.Select(term => term.Print(format)));
            return given.Length == 0 ? Result.Print(format) : $"{given} → {Result.Print(format)}";
        }
        var parts = Formula.Split(' ')
            .Select(part => Terms.FirstOrDefault(term => term.Symbol == part)?.Print(format) ?? part);
        return $"{string.Join(' ', parts)} = {Result.Print(format)}";
    }
}

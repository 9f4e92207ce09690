using System.Globalization;

namespace Training.Measures.Workings;

/// <summary>A sum, line by line, so that a bench or a lesson can show how a result came about.</summary>
/// <param name="Lines">The lines in the order in which they are worked.</param>
public sealed record Working(IReadOnlyList<WorkingLine> Lines)
{
    /// <summary>This sum and then that one.</summary>
    public Working Then(Working next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return new([.. Lines, .. next.Lines]);
    }

    /// <summary>The sum with numbers, a line each.</summary>
    public override string ToString() => string.Join('\n', Lines.Select(line => line.Numbers(CultureInfo.InvariantCulture)));
}

/// <summary>A result and the sum that led to it.</summary>
/// <typeparam name="T">What was worked out.</typeparam>
/// <param name="Value">The result, not rounded.</param>
/// <param name="Working">The sum.</param>
public sealed record Worked<T>(T Value, Working Working);

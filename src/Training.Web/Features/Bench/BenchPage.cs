using Training.Measures;
using Training.Measures.Quantities;
using Training.Measures.Readings;
using Training.Measures.Workings;

namespace Training.Web.Features.Bench;

/// <summary>One job of the bench: what was typed and what comes of it.</summary>
/// <param name="Measure">The job.</param>
/// <param name="Fields">Its numbers as they were typed.</param>
/// <param name="Rules">Its rules, and which of them was chosen.</param>
public sealed record BenchPage(Measure Measure, IReadOnlyList<BenchField> Fields, IReadOnlyList<BenchRule> Rules)
{
    /// <summary>The field that carries a rule's choice of all of them.</summary>
    public const string Each = "each";

    /// <summary>The answers, one for each rule that was asked for; where sources disagree they stand side by side.</summary>
    public IReadOnlyList<BenchAnswer> Answers { get; private init; } = [];

    /// <summary>What is wrong with the numbers together; null where nothing is.</summary>
    public Objection? Wrong { get; private init; }

    /// <summary>Whether anything that was typed could not be taken.</summary>
    public bool IsWrong => Wrong is not null || Fields.Any(typed => typed.Wrong is not null);

    /// <summary>Reads what was typed and works it out.</summary>
    /// <param name="measure">The job.</param>
    /// <param name="typed">What stands in a field of the form; null where it was not sent.</param>
    public static BenchPage Of(Measure measure, Func<string, string?> typed)
    {
        ArgumentNullException.ThrowIfNull(measure);
        ArgumentNullException.ThrowIfNull(typed);
        var isAsked = measure.Inputs.Any(input => typed(input.Name) is not null);
        var fields = measure.Inputs.Select(input => BenchField.Of(input, typed(input.Name), typed(UnitOf(input.Name)), isAsked)).ToList();
        var rules = measure.Choices.Select(choice => new BenchRule(choice,
            typed(choice.Name) is { } chosen && choice.Options.ContainsKey(chosen) ? chosen : Each)).ToList();
        var page = new BenchPage(measure, fields, rules);
        return isAsked && !page.IsWrong ? page.Worked() : page;
    }

    /// <summary>The name of the field that carries the unit of a number.</summary>
    /// <param name="input">The number's name.</param>
    public static string UnitOf(string input) => $"{input}-unit";

    private BenchPage Worked()
    {
        var inputs = Fields.ToDictionary(field => field.Input.Name, field => field.Value!.Value, StringComparer.Ordinal);
        var answers = new List<BenchAnswer>();
        foreach (var choices in Combinations(0))
        {
            var worked = Measure.Work(inputs, choices);
            if (!worked.IsOk)
            {
                // Of a single number it is plain which one is meant; a rule that has no row for it leaves the others.
                if (Rules.Any(rule => rule.Chosen == Each) && Rules.Count > 0)
                {
                    answers.Add(new(NamesOf(choices), null, worked.Objection));
                    continue;
                }

                return Fields.Count == 1 ? this with { Fields = [Fields[0] with { Wrong = worked.Objection }] } : this with { Wrong = worked.Objection };
            }

            answers.Add(new(NamesOf(choices), worked.Value, null));
        }

        return answers.TrueForAll(answer => answer.Worked is null) ? this with { Wrong = answers[0].Wrong } : this with { Answers = answers };
    }

    private IEnumerable<IReadOnlyDictionary<string, string>> Combinations(int from)
    {
        if (from == Rules.Count)
        {
            yield return new Dictionary<string, string>();
            yield break;
        }

        var rule = Rules[from];
        foreach (var option in rule.Chosen == Each ? rule.Choice.Options.Keys : [rule.Chosen])
            foreach (var rest in Combinations(from + 1))
                yield return new Dictionary<string, string>(rest) { [rule.Choice.Name] = option };
    }

    private IReadOnlyList<Phrase> NamesOf(IReadOnlyDictionary<string, string> choices) =>
        [.. Measure.Choices.Select(choice => choice.Options[choices[choice.Name]])];
}

/// <summary>A number of a job as it was typed.</summary>
/// <param name="Input">What it is.</param>
/// <param name="Typed">The text, kept as it is.</param>
/// <param name="Unit">The unit beside it.</param>
/// <param name="Value">The number in its kind's base unit; null where it could not be read or nothing was asked yet.</param>
/// <param name="Wrong">Why it was not taken.</param>
public sealed record BenchField(MeasureInput Input, string? Typed, string Unit, double? Value, Objection? Wrong)
{
    /// <summary>Whether a number below zero makes sense, for which a telephone's keys for numbers have no sign.</summary>
    public bool MayBeNegative => Input.Kind.Lowest < 0;

    internal static BenchField Of(MeasureInput input, string? typed, string? unit, bool isAsked)
    {
        var shown = input.Kind.Units.Any(known => known.Symbol == unit) ? unit! : input.Unit;
        if (!isAsked) return new(input, typed, shown, null, null);
        var read = TypedQuantity.Read(input.Kind, typed, shown);
        return read.IsOk ? new(input, typed, shown, read.Value, null) : new(input, typed, shown, null, read.Objection);
    }
}

/// <summary>A rule on which sources disagree.</summary>
/// <param name="Choice">The rules to choose from.</param>
/// <param name="Chosen">The one that was chosen, or <see cref="BenchPage.Each"/>.</param>
public sealed record BenchRule(MeasureChoice Choice, string Chosen);

/// <summary>An answer by one set of rules.</summary>
/// <param name="By">The rules.</param>
/// <param name="Worked">The result in the answer's base unit, with its sum; null where these rules say nothing of the numbers.</param>
/// <param name="Wrong">Why they say nothing.</param>
public sealed record BenchAnswer(IReadOnlyList<Phrase> By, Worked<double>? Worked, Objection? Wrong);

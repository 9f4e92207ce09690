using Training.Measures.Quantities;

namespace Training.Measures.Readings;

/// <summary>
/// A question that asks for a reading and, with a table, for what is done about it. One question draws as many
/// readings as there are seeds; the same stream of bits always gives the same reading.
/// </summary>
public sealed class ReadingQuestion
{
    // A reading that lies on the edge between two decisions is drawn again, but not for ever.
    private const int MostDraws = 32;

    private readonly IReadOnlyDictionary<string, string> choices;
    private readonly IReadOnlyList<(MeasureInput Input, InputRange Range, Unit Unit)> inputs;

    private ReadingQuestion(
        Measure measure, IReadOnlyDictionary<string, string> choices,
        IReadOnlyList<(MeasureInput Input, InputRange Range, Unit Unit)> inputs, DecisionTable? table, decimal division)
    {
        Measure = measure;
        Table = table;
        AnswerDivision = division;
        this.choices = choices;
        this.inputs = inputs;
    }

    /// <summary>What is asked for.</summary>
    public Measure Measure { get; }

    /// <summary>What follows from the value; null where the value alone is asked for.</summary>
    public DecisionTable? Table { get; }

    /// <summary>The rule that was settled for every choice of the measure, by the choice's name.</summary>
    public IReadOnlyDictionary<string, string> Rules => choices;

    /// <summary>One division of the instrument on which the answer would be read, in the answer's unit.</summary>
    public decimal AnswerDivision { get; }

    /// <summary>A question, or the first thing that is wrong with it.</summary>
    /// <param name="measureId">The measure.</param>
    /// <param name="choices">A rule for every choice of the measure.</param>
    /// <param name="ranges">A range for every input of the measure.</param>
    /// <param name="table">What follows from the value, or null.</param>
    /// <param name="answerDivision">Another division for the answer than the measure's own, or null.</param>
    public static Outcome<ReadingQuestion> Of(
        string measureId, IReadOnlyDictionary<string, string> choices, IReadOnlyList<InputRange> ranges,
        DecisionTable? table = null, decimal? answerDivision = null)
    {
        ArgumentNullException.ThrowIfNull(choices);
        ArgumentNullException.ThrowIfNull(ranges);
        return Measure.Find(measureId).Then<ReadingQuestion>(measure =>
        {
            if ((FirstFault(measure, choices, ranges) ?? table?.Objection()) is { } fault)
                return fault;
            if (answerDivision < 0)
                return new Objection("The division of the answer is 0 or more.");
            var inputs = measure.Inputs.Select(input => (input, ranges.First(range => range.Name == input.Name)))
                .Select(pair => (pair.input, pair.Item2, pair.Item2.UnitOf(pair.input)!)).ToList();
            var question = new ReadingQuestion(
                measure, choices, inputs, table, answerDivision ?? measure.Answer.Division);
            return question.ObjectionToTheRanges() is { } objection ? objection : question;
        });
    }

    /// <summary>Draws a reading.</summary>
    /// <param name="bits">A stream of random bits that a seed began; at least one value an input is taken.</param>
    public DrawnReading Draw(Func<ulong> bits)
    {
        ArgumentNullException.ThrowIfNull(bits);
        var reading = DrawOnce(bits);
        for (var draw = 1; draw < MostDraws && reading.Decisions.Count > 1; draw++)
            reading = DrawOnce(bits);
        return reading;
    }

    private DrawnReading DrawOnce(Func<ulong> bits)
    {
        var drawn = inputs.Select(each => each.Range.Draw(bits())).ToList();
        var values = Values(drawn);
        // The ranges were tried when the question was made.
        var worked = Measure.Work(values, choices).Value;
        var (low, high) = WithinHalfADivision(values, worked.Value);
        return new DrawnReading(
            Measure,
            [.. inputs.Zip(drawn, (each, number) => new ReadingInput(each.Input, number, each.Unit, each.Range.Division))],
            worked.Value,
            Math.Max(worked.Value - low, high - worked.Value) + OneDivision,
            Table,
            Table?.Between(low, high) ?? [],
            worked.Working);
    }

    private double OneDivision
    {
        get
        {
            var unit = Measure.Answer.Kind.Units.First(each => each.Symbol == Measure.Answer.Unit);
            return (double)AnswerDivision * unit.Factor;
        }
    }

    // What the value can be when every instrument is read to half a division: the extremes lie at the corners, since
    // the measures rise or fall with each input.
    private (double Low, double High) WithinHalfADivision(Dictionary<string, double> values, double value)
    {
        var read = inputs.Where(each => each.Range.Division > 0).ToList();
        var (low, high) = (value, value);
        for (var corner = 0; corner < 1 << read.Count; corner++)
        {
            var moved = new Dictionary<string, double>(values, StringComparer.Ordinal);
            for (var at = 0; at < read.Count; at++)
            {
                var half = (double)read[at].Range.Division / 2 * read[at].Unit.Factor;
                moved[read[at].Input.Name] += (corner >> at & 1) == 0 ? -half : half;
            }
            var there = Measure.Work(moved, choices);
            if (!there.IsOk)
                continue;
            low = Math.Min(low, there.Value.Value);
            high = Math.Max(high, there.Value.Value);
        }
        return (low, high);
    }

    // Every number of every input with the others at their first, and all ends with all ends: a measure takes whole
    // intervals, or a table's rows for one input alone.
    private Objection? ObjectionToTheRanges()
    {
        var sweeps = inputs.SelectMany((each, swept) => Enumerable.Range(0, each.Range.Count)
            .Select(number => inputs.Select((_, at) => at == swept ? number : 0)));
        var corners = Enumerable.Range(0, 1 << inputs.Count)
            .Select(corner => inputs.Select((each, at) => (corner >> at & 1) == 0 ? 0 : each.Range.Count - 1));
        foreach (var places in sweeps.Concat(corners))
        {
            var worked = Measure.Work(Values(inputs.Zip(places, (each, at) => each.Range[at])), choices);
            if (!worked.IsOk)
                return worked.Objection;
        }
        return null;
    }

    private Dictionary<string, double> Values(IEnumerable<decimal> numbers) =>
        inputs.Zip(numbers).ToDictionary(
            pair => pair.First.Input.Name, pair => pair.First.Unit.ToBase((double)pair.Second), StringComparer.Ordinal);

    private static Objection? FirstFault(
        Measure measure, IReadOnlyDictionary<string, string> choices, IReadOnlyList<InputRange> ranges)
    {
        if (ranges.FirstOrDefault(range => measure.Inputs.All(input => input.Name != range.Name)) is { } stranger)
            return new($"The measure “{measure.Id}” has no input “{stranger.Name}”.");
        if (choices.Keys.FirstOrDefault(name => measure.Choices.All(choice => choice.Name != name)) is { } unknown)
            return new($"The measure “{measure.Id}” has no choice “{unknown}”.");
        foreach (var input in measure.Inputs)
        {
            var given = ranges.Where(range => range.Name == input.Name).ToList();
            if (given.Count != 1)
                return new($"The measure “{measure.Id}” needs one range for “{input.Name}”.");
            if (given[0].ObjectionFor(input) is { } objection)
                return objection;
        }
        return null;
    }
}

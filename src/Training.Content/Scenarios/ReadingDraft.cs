using System.Globalization;
using Training.Content.Modules;
using Training.Content.Yaml;
using Training.Measures.Quantities;
using Training.Measures.Readings;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Content.Scenarios;

/// <summary>The reading of a scenario as its file has it, sound or not.</summary>
internal sealed record ReadingDraft(Place Place)
{
    // A decision that so many draws never call for is one that nobody ever has to take.
    private const int SeedsTried = 60;

    /// <summary>The task; null where an error stands.</summary>
    public ReadingTask? Task { get; private init; }

    public ReadingWords? Words { get; private init; }

    public static ReadingDraft Read(YamlNode node, ProblemList problems)
    {
        var draft = new ReadingDraft(node.Place);
        if (Fields.Open(node, "A reading", problems, "measure", "rules", "inputs", "division", "decide", "sources") is not { } fields) return draft;
        if (fields.Id("measure", needed: true) is not { } id) return draft;
        var found = Measure.Find(id.Text);
        if (!found.IsOk)
        {
            problems.Error(id.Place, found.Objection.Sentence);
            return draft;
        }

        var measure = found.Value;
        var inputs = fields.Entries("inputs", needed: true).Select(entry => InputDraft.Read(entry.Key, entry.Value, measure, problems)).OfType<InputDraft>().ToList();
        var decisions = BandDraft.ReadAll(fields.Items("decide"), measure, problems);
        var sources = fields.Items("sources", needed: fields.Holds("decide")).Select(item => SourceDraft.Read(item, problems, isTranslation: false)?.Source).OfType<Source>().ToList();
        var rules = fields.Entries("rules").ToDictionary(
            entry => entry.Key.Text, entry => fields.AsText(entry.Value, $"\"{entry.Key.Text}\"") is { } text ? text : entry.Key);
        var division = fields.Number("division");
        if (problems.HasErrors) return draft;

        var named = decisions.DistinctBy(band => band.Words.Do).ToList();
        DecisionTable? table = decisions.Count == 0
            ? null
            : new([.. decisions.Select(band => new DecisionBand(NumberOf(named.FindIndex(other => other.Words.Do == band.Words.Do)), band.Limit, band.LimitBelongs))]);
        var question = ReadingQuestion.Of(
            measure.Id, rules.ToDictionary(rule => rule.Key, rule => rule.Value.Text), [.. inputs.Select(input => input.Range)], table, division);
        if (!question.IsOk)
        {
            problems.Error(PlaceOf(question.Objection.Sentence, fields, inputs, rules), question.Objection.Sentence);
            return draft;
        }

        var drawn = Enumerable.Range(1, SeedsTried).SelectMany(seed => question.Value.Draw(new SeededDraw(seed).Next).Decisions).ToHashSet();
        foreach (var (index, band) in named.Index().Where(item => !drawn.Contains(NumberOf(item.Index))))
            problems.Error(band.Place, $"None of {SeedsTried} readings calls for \"{Fields.Shown(band.Words.Do)}\": widen the ranges, or move the limits.");
        return draft with
        {
            Task = new(
                question.Value,
                inputs.ToDictionary(input => input.Range.Name, input => input.On),
                [.. named.Select(band => band.Stakes)]),
            Words = new([.. named.Select(band => band.Words)], Called(inputs)) { Sources = sources },
        };
    }

    /// <summary>The words in another language, held against those of the default one.</summary>
    public static ReadingWords? ReadWords(YamlNode node, ReadingWords? original, string language, ProblemList problems)
    {
        if (Fields.Open(node, "A translated reading", problems, "called", "decide", "sources") is not { } fields) return null;
        var items = fields.Items("decide", needed: original?.Decisions.Count > 0);
        var decisions = items.Select(item => BandDraft.ReadWords(item, problems)).OfType<DecisionWords>().ToList();
        if (original is not null && decisions.Count != original.Decisions.Count)
            problems.Error(fields.PlaceOf("decide"), $"The reading has {original.Decisions.Count} decisions: translate each, in the same order.");
        if (original is not null)
            foreach (var (item, words) in items.Zip(original.Decisions)) BandDraft.CheckWords(item, words, problems);
        var sources = fields.Items("sources").Select(item => SourceDraft.Read(item, problems, isTranslation: true)).OfType<SourceDraft>().ToList();
        if (original is not null && sources.Count > 0 && sources.Count != original.Sources.Count)
            problems.Error(fields.PlaceOf("sources"), $"Translate each source of the reading, in the same order: {original.Sources.Count}.");
        return new(decisions, fields.Entries("called").ToDictionary(
            entry => entry.Key.Text, entry => fields.AsText(entry.Value, $"\"{entry.Key.Text}\"")?.Text ?? ""))
        {
            Sources = SourceDraft.In(original?.Sources ?? [], sources, language),
        };
    }

    private static Dictionary<string, string> Called(IEnumerable<InputDraft> inputs) =>
        inputs.Where(input => input.Called is not null).ToDictionary(input => input.Range.Name, input => input.Called!);

    private static string NumberOf(int index) => (index + 1).ToString(CultureInfo.InvariantCulture);

    // The measures name the input or the choice that they object to in quotation marks.
    private static Place PlaceOf(string sentence, Fields fields, IReadOnlyList<InputDraft> inputs, Dictionary<string, YamlText> rules)
    {
        bool Names(string name) => sentence.Contains($"“{name}”", StringComparison.Ordinal);
        if (inputs.FirstOrDefault(input => Names(input.Range.Name)) is { } input) return input.Place;
        if (rules.FirstOrDefault(rule => Names(rule.Key)) is { Value: { } rule }) return rule.Place;
        return sentence.Contains("table", StringComparison.Ordinal) ? fields.PlaceOf("decide") : fields.KeyPlaceOf("inputs");
    }
}

/// <summary>An input of a reading with its place.</summary>
internal sealed record InputDraft(Place Place, InputRange Range, Instrument On, string? Called)
{
    public static InputDraft? Read(YamlText name, YamlNode node, Measure measure, ProblemList problems)
    {
        if (Fields.Open(node, "An input", problems, "from", "to", "step", "one-of", "unit", "division", "on", "called") is not { } fields) return null;
        if (measure.Inputs.All(input => input.Name != name.Text))
        {
            problems.Error(name.Place, $"The measure “{measure.Id}” has no input “{Fields.Shown(name.Text)}”: it has {string.Join(", ", measure.Inputs.Select(input => input.Name))}.");
            return null;
        }

        var (unit, division) = (fields.Text("unit")?.Text, fields.Number("division") ?? 0);
        var on = fields.Code<Instrument>("on") ?? Instrument.Told;
        if (on is Instrument.Hydrometer or Instrument.Thermometer && division == 0)
            problems.Error(name.Place, $"What is read off a scale needs its \"division\": the distance of two lines.");
        InputRange? range;
        if (fields.Holds("one-of"))
        {
            if (fields.Has("from") || fields.Has("to") || fields.Has("step"))
                problems.Error(fields.KeyPlaceOf("one-of"), "An input has \"one-of\", or \"from\", \"to\" and \"step\": keep one of the two.");
            range = InputRange.OneOf(name.Text, [.. fields.Texts("one-of").Select(fields.AsNumber).OfType<decimal>()], unit, division);
        }
        else
        {
            var (from, to, step) = (fields.Number("from", needed: true), fields.Number("to", needed: true), fields.Number("step", needed: true));
            range = from is null || to is null || step is null ? null : InputRange.Steps(name.Text, from.Value, to.Value, step.Value, unit, division);
        }

        return range is null ? null : new(name.Place, range, on, fields.Text("called")?.Text);
    }
}

/// <summary>A band of a decision table with its place.</summary>
internal sealed record BandDraft(Place Place, DecisionWords Words, double? Limit, bool LimitBelongs, Stakes Stakes)
{
    public static IReadOnlyList<BandDraft> ReadAll(IReadOnlyList<YamlNode> items, Measure measure, ProblemList problems) =>
        [.. items.Select(item => Read(item, measure, problems)).OfType<BandDraft>()];

    public static DecisionWords? ReadWords(YamlNode node, ProblemList problems) =>
        Fields.Open(node, "A decision", problems, "do", "because", "otherwise") is { } fields ? WordsOf(fields) : null;

    /// <summary>Reports what of the words is still in the language that they translate.</summary>
    public static void CheckWords(YamlNode node, DecisionWords original, ProblemList problems)
    {
        if (node is not YamlMap map) return;
        foreach (var (key, words) in new[] { ("do", original.Do), ("because", original.Because), ("otherwise", original.Otherwise) })
            Untranslated.Report(map.Fields.FirstOrDefault(field => field.Key.Text == key)?.Value as YamlText, words, problems);
    }

    private static BandDraft? Read(YamlNode node, Measure measure, ProblemList problems)
    {
        if (Fields.Open(node, "A decision", problems, "do", "below", "up-to", "because", "otherwise", "harm", "severity") is not { } fields) return null;
        if (WordsOf(fields) is not { } words) return null;
        if (fields.Has("below") && fields.Has("up-to"))
            problems.Error(fields.KeyPlaceOf("up-to"), "A decision ends \"below\" a limit or at one (\"up-to\"): keep one of the two.");
        var limit = fields.Text("below") ?? fields.Text("up-to");
        double? value = null;
        if (limit is not null)
        {
            var read = TypedQuantity.Read(measure.Answer.Kind, limit.Text, measure.Answer.Unit);
            if (read.IsOk) value = read.Value;
            else problems.Error(limit.Place, read.Objection.Sentence);
        }

        return new(fields.Place, words, value, fields.Has("up-to"), new(
            fields.Code<Harm>("harm") ?? Harm.Work, fields.Code<Severity>("severity") ?? Severity.Serious));
    }

    private static DecisionWords? WordsOf(Fields fields) =>
        fields.Text("do", needed: true) is { } done && fields.Text("because", needed: true) is { } because
            ? new(done.Text, because.Text, fields.Text("otherwise")?.Text)
            : null;
}

using Training.Content.Scenarios;
using Training.Measures.Readings;
using Training.Measures.Workings;
using Training.Sequencing;
using Training.Sequencing.Drawing;

namespace Training.Records.Asking;

/// <summary>A reading to be taken, and what is to be decided by it.</summary>
internal sealed class AskedReading(Scenario scenario, ReadingTask task, DrawnReading drawn)
    : Question(QuestionKind.Reading, scenario, null, null)
{
    private const int LongestText = 60;

    public override QuestionView View(string language)
    {
        var words = Scenario.In(language).Reading ?? Scenario.Text.Reading!;
        var measure = drawn.Measure;
        return new(Kind, Scenario, language)
        {
            ProcedureTitle = measure.Title.ToString(),
            Reading = new(
                measure.Title,
                [.. drawn.Inputs.Select(input => new ReadingInputView(
                    words.Called.GetValueOrDefault(input.Input.Name), task.InstrumentOf(input.Input.Name), input))],
                [.. measure.Choices.Select(choice => choice.Options[task.Question.Rules[choice.Name]])],
                measure.Answer,
                [.. words.Decisions.Select((decision, at) => new OptionView(Number(at), decision.Do))]),
        };
    }

    public override Refusal? Lacks(KeptAnswer answer)
    {
        var typed = TypedReading.Parse(answer.Json).Value;
        if (typed.Value.Length == 0) return new("Write down the value that you find.");
        return drawn.Table is not null && typed.Decision is null ? new("Say what is to be done: choose one of the decisions.") : null;
    }

    public override JudgedAnswerView Judge(string? keptJson, string language)
    {
        var typed = keptJson is null ? new("", null) : TypedReading.Parse(keptJson).Value;
        var value = typed.Value.Length > 0 ? drawn.JudgeValue(typed.Value).Value : null;
        var decision = drawn.Table is null ? null : typed.Decision;
        var words = Scenario.In(language).Reading ?? Scenario.Text.Reading!;
        var right = drawn.Decisions.Select(number => words.Decisions[Index(number)]).ToList();
        var isDecisionRight = drawn.Table is null || (decision is not null && drawn.Decisions.Contains(decision));
        return new JudgedReadingView(View(language), typed, new(
            Printed(drawn.Value), Printed(drawn.Tolerance, asDifference: true), drawn.Working, words.Sources, [.. drawn.Decisions])
        {
            IsValueRight = value?.IsRight ?? false,
            IsDecisionRight = isDecisionRight,
            DecisionFollows = value is not null && decision is not null && drawn.Table!.For(value.Answer) == decision,
            HasTable = drawn.Table is not null,
            Because = [.. right.Select(told => told.Because)],
            Otherwise = isDecisionRight || decision is null ? null : words.Decisions[Index(decision)].Otherwise,
            Stakes = isDecisionRight || decision is null ? null : task.Stakes[Index(decision)],
        });
    }

    public override string RightAnswer() => TypedReading.Write(new(
        drawn.Value.ToString("R", System.Globalization.CultureInfo.InvariantCulture) + " " + drawn.Measure.Answer.Kind.BaseUnit.Symbol,
        drawn.Table is null ? null : drawn.Decisions[0]));

    /// <summary>No value, and any decision.</summary>
    public override string BlindAnswer(SeededDraw lots) =>
        TypedReading.Write(new("", drawn.Table is null ? null : Number(lots.Below(Scenario.Text.Reading!.Decisions.Count))));

    protected override Outcome<KeptAnswer, Refusal> Take(string answerJson)
    {
        var read = TypedReading.Parse(answerJson);
        if (!read.IsOk) return read.Fault;
        var typed = read.Value with { Value = read.Value.Value.Trim() };
        if (typed.Value.Length > LongestText) return new Refusal("The value is too long to be read.");
        if (typed.Value.Length > 0 && drawn.JudgeValue(typed.Value) is { IsOk: false } unread) return new Refusal($"{unread.Objection.Said}");
        if (typed.Decision is { } decision && (drawn.Table is null || drawn.Table.Bands.All(band => band.Decision != decision)))
            return new Refusal($"This question has no decision “{decision}”.");
        return new KeptAnswer(TypedReading.Write(typed), (typed.Value.Length > 0 ? 1 : 0) + (typed.Decision is null ? 0 : 1));
    }

    private string Printed(double inBaseUnit, bool asDifference = false)
    {
        var answer = drawn.Measure.Answer;
        var unit = answer.Kind.Units.First(each => each.Symbol == answer.Unit);
        return new Term("", asDifference ? inBaseUnit / unit.Factor : unit.FromBase(inBaseUnit), unit.Symbol, answer.Kind.Decimals)
            .Print(System.Globalization.CultureInfo.CurrentCulture);
    }

    private static string Number(int index) => (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static int Index(string number) => int.Parse(number, System.Globalization.CultureInfo.InvariantCulture) - 1;
}

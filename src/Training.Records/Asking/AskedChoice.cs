using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Questions;

namespace Training.Records.Asking;

/// <summary>A question about an order of work with options to choose from.</summary>
internal sealed class AskedChoice(QuestionKind kind, Scenario scenario, WrittenProcedure procedure, Grader grader, ChoiceQuestion drawn)
    : Question(kind, scenario, procedure, grader.Variant)
{
    public override QuestionView View(string language)
    {
        var texts = Written!.In(language);
        var prompt = drawn.Prompt;
        // Where the fault is looked for the order itself is what is chosen from.
        var isChosenFrom = prompt.Kind == ChoiceKind.FirstFault;
        return new(Kind, Scenario, language)
        {
            ProcedureTitle = texts.Title,
            Variant = Variant,
            Start = isChosenFrom ? [] : [.. prompt.Done.Select(entry => Words.Done(texts, entry))],
            Choice = new([.. prompt.Options.Select(option => Shown(texts, option))], prompt.TakesSeveral)
            {
                About = prompt.About is { } about ? Words.Of(texts, about).Do : null,
                Then = [.. prompt.Then.Select(entry => Words.Done(texts, entry))],
            },
        };
    }

    public override Refusal? Lacks(KeptAnswer answer) => answer.Parts == 0 ? new("Choose an option.") : null;

    public override JudgedAnswerView Judge(string? keptJson, string language)
    {
        IReadOnlyList<string> chosen = keptJson is null ? [] : ChosenOptions.Parse(keptJson).Value;
        var judgement = chosen.Count == 0 ? drawn.Unanswered : drawn.Judge(chosen).Value;
        var replay = judgement.Replayed is { } answer
            ? new GradedOrder(answer, grader.Grade(answer).Value, Written!.In(language))
            : null;
        return new JudgedChoiceView(View(language), chosen, judgement, replay, Written!.In(language));
    }

    public override string RightAnswer() =>
        ChosenOptions.Write([.. drawn.Prompt.TakesSeveral ? drawn.Right : drawn.Right.Take(1)]);

    /// <summary>Any option; where several may be right, each with one chance in two.</summary>
    public override string BlindAnswer(SeededDraw lots)
    {
        string[] options = [.. drawn.Prompt.Options.Select(option => option.Id)];
        string[] tossed = drawn.Prompt.TakesSeveral ? [.. options.Where(_ => lots.Below(2) == 0)] : [];
        return ChosenOptions.Write(tossed.Length > 0 ? tossed : [options[lots.Below(options.Length)]]);
    }

    protected override Outcome<KeptAnswer, Refusal> Take(string answerJson)
    {
        var chosen = ChosenOptions.Parse(answerJson);
        if (!chosen.IsOk) return chosen.Fault;
        return drawn.WhyNot(chosen.Value) is { } wrong
            ? wrong
            : new KeptAnswer(ChosenOptions.Write(chosen.Value), chosen.Value.Count);
    }

    private OptionView Shown(Procedure texts, Option option) => new(option.Id, option switch
    {
        { Step: { } step } => Words.Of(texts, step).Do,
        { Time: { } time } => time.ToString(),
        { Consequence: { } told } => Words.Otherwise(texts, told),
        { Place: { } place } => Words.WithTime(Words.Done(texts, drawn.Prompt.Done[place - 1])),
        _ => "",
    });
}

using Training.Content.Procedures;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Records.Asking;

/// <summary>
/// A question as it was drawn, with what is right: it never leaves the server. The same publication, scenario, kind and
/// lots give the same question, so it is drawn again wherever it is shown or judged and nothing of it is stored.
/// </summary>
internal abstract class Question(QuestionKind kind, Scenario scenario, WrittenProcedure? written, VariantId? variant)
{
    // An answer is what somebody taps or types on a screen; this is far above that and far below what would hurt.
    private const int LongestAnswer = 64 * 1024;

    public QuestionKind Kind => kind;

    public Scenario Scenario => scenario;

    /// <summary>The procedure as it is judged by in the scenario; null where none is.</summary>
    public WrittenProcedure? Written => written;

    public VariantId? Variant => variant;

    /// <summary>What may be shown of it before an answer is in.</summary>
    public abstract QuestionView View(string language);

    /// <summary>Reads an answer, finished or not, or says in a sentence why it could not be judged.</summary>
    public Outcome<KeptAnswer, Refusal> Read(string answerJson) => answerJson is null || answerJson.Length > LongestAnswer
        ? new Refusal("The answer is too long to be read.")
        : Take(answerJson);

    /// <summary>What an answer still lacks before it can be handed in for practice, or null.</summary>
    public abstract Refusal? Lacks(KeptAnswer answer);

    /// <summary>Judges an answer that was read before; null for none. What is not there counts as not done.</summary>
    public abstract JudgedAnswerView Judge(string? keptJson, string language);

    /// <summary>A right answer, as somebody gives it who knows the trade; for the demo's people.</summary>
    public abstract string RightAnswer();

    /// <summary>An answer by lot, as somebody gives it who knows nothing: what blind answers get is how hard it is.</summary>
    public abstract string BlindAnswer(SeededDraw lots);

    protected abstract Outcome<KeptAnswer, Refusal> Take(string answerJson);
}

/// <summary>An answer in the form in which it is kept.</summary>
/// <param name="Json">The answer.</param>
/// <param name="Parts">How many steps, options or fields are in it.</param>
internal sealed record KeptAnswer(string Json, int Parts);

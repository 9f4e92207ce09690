using Training.Sequencing.Answers;
using Training.Sequencing.Findings;
using Training.Sequencing.Layouts;
using Training.Sequencing.Mending;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;
using Training.Sequencing.Replaying;
using Training.Sequencing.Starting;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing;

/// <summary>Grades answers to one procedure on one kind of vehicle. Safe to share between threads.</summary>
public sealed class Grader
{
    private readonly Layout layout;
    private readonly PlanShelf shelf;

    private Grader(Layout layout)
    {
        this.layout = layout;
        shelf = new(layout);
    }

    internal Layout Layout => layout;

    internal PlanShelf Plans => shelf;

    /// <summary>The procedure that is graded by.</summary>
    public Procedure Procedure => layout.Procedure;

    /// <summary>The kind of vehicle; null where the procedure tells none apart.</summary>
    public VariantId? Variant => layout.Variant;

    /// <summary>Makes a grader, or says what the author must mend first.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static Outcome<Grader, AuthoringFaults> For(Procedure procedure, VariantId? variant = null)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var problems = ProcedureCheck.Problems(procedure, variant, out var layout);
        return layout is null ? new AuthoringFaults(problems) : new Grader(layout);
    }

    /// <summary>Grades an answer, or refuses it whole with a sentence.</summary>
    /// <param name="answer">The answer.</param>
    public Outcome<Verdict, Refusal> Grade(Answer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (Reading.TryRead(layout, answer, out var refusal) is not { } reading) return refusal!;
        if (TryPlan(reading, isForAuthor: false, out refusal) is not { } planned) return refusal!;
        var attempt = new Attempt(layout, reading, planned.Choice, planned.Plan, planned.Late);
        var findings = Found(attempt);
        var mend = LeastMend.Of(attempt, findings.Count == 0);
        return new Verdict
        {
            Safe = findings.IsSafe,
            Score = Score.Of(mend.Kept, mend.Mend.Drop.Count, findings, attempt.ToDo),
            Kept = mend.Kept,
            Findings = findings.All,
            Mend = mend.Mend,
            Nearest = mend.Nearest,
            Replay = new ReplayedEntries(attempt, findings),
        };
    }

    /// <summary>
    /// What an answer had the chance to get wrong, found or not (<see cref="Chance"/>): a rule of which both steps are
    /// there, a step that is to be done, a decoy that was offered. Every finding is about one of them, but for a step
    /// that comes too late (<see cref="ChanceKind.TooLate"/>), of which nobody can say who else had the chance.
    /// </summary>
    /// <param name="answer">The answer.</param>
    /// <param name="offered">What could be chosen besides the right steps; more may be named.</param>
    public Outcome<IReadOnlySet<Chance>, Refusal> Chances(Answer answer, IEnumerable<StepId> offered)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(offered);
        if (Reading.TryRead(layout, answer, out var refusal) is not { } reading) return refusal!;
        if (TryPlan(reading, isForAuthor: false, out refusal) is not { } planned) return refusal!;
        return Findings.Chances.Of(new(layout, reading, planned.Choice, planned.Plan, planned.Late), offered);
    }

    /// <summary>
    /// Why a question may not start like this, or null: the start must be possible, and the job must still be
    /// finishable from it.
    /// </summary>
    /// <param name="start">What was done before, in order.</param>
    public Refusal? CheckStart(IReadOnlyList<Entry> start)
    {
        ArgumentNullException.ThrowIfNull(start);
        if (Reading.TryRead(layout, new([]) { Start = start }, out var refusal) is not { } reading) return refusal;
        TryPlan(reading, isForAuthor: true, out refusal);
        return refusal;
    }

    /// <summary>What must wait for what: the order behind the rules, for a plan that people look at.</summary>
    public StepOrder Order() => StepOrder.Of(layout, shelf);

    private StartedPlan? TryPlan(Reading reading, bool isForAuthor, out Refusal? refusal)
    {
        if (reading.Start.Length > 0)
        {
            refusal = StartCheck.Fault(layout, reading);
            return refusal is null ? StartedPlan.TryMake(layout, shelf, reading, isForAuthor, out refusal) : null;
        }

        refusal = null;
        var choice = StepChoice.Of(layout, reading.Start, reading.Entries);
        return new(choice, shelf.For(choice.Steps), null);
    }

    private static FindingList Found(Attempt attempt)
    {
        var findings = new FindingList();
        Missing.Find(attempt, findings);
        DecoyDone.Find(attempt, findings);
        RepeatedStep.Find(attempt, findings);
        ExtraChoice.Find(attempt, findings);
        WrongOrder.Find(attempt, findings);
        TooSoon.Find(attempt, findings);
        WrongState.Find(attempt, findings);
        WrongOrder.FindLate(attempt, findings);
        return findings;
    }
}

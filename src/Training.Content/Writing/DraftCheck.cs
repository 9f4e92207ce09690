using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Content.Writing;

/// <summary>What an author is told while writing. Pure: the same files give the same report.</summary>
public static class DraftCheck
{
    // Enough for 40 steps with a rule for each; more is estimated rather than waited for.
    private static readonly AnalysisLimits Quick = new(60_000, 400);

    /// <summary>The most steps, with the decoys, of which the orders are looked at while somebody waits: three times what a long job has.</summary>
    public const int MostSteps = 120;

    /// <summary>The most rules of which the orders are looked at while somebody waits.</summary>
    public const int MostRules = 200;

    /// <summary>Reads a draft among other files.</summary>
    /// <param name="others">The other files, as many as are to be looked at; see <see cref="Surroundings"/>.</param>
    /// <param name="draft">The draft.</param>
    /// <param name="given">A wrong order that people often give, where one is known.</param>
    public static DraftReport Of(IReadOnlyList<ContentFile> others, ContentFile draft, Answer? given = null)
    {
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(draft);
        var reading = ContentReader.Read([.. others.Where(file => file.Path != draft.Path), draft]);
        var report = new DraftReport(draft.Path, reading.Problems, reading.Library);
        return ContentPlace.Of(draft.Path) is { Sort: ContentSort.Procedure, Language: null } ? WithFigures(report, draft, given) : report;
    }

    /// <summary>How many things keep a draft back.</summary>
    /// <param name="others">The other files, as many as are to be looked at; see <see cref="Surroundings"/>.</param>
    /// <param name="draft">The draft.</param>
    public static int Faults(IReadOnlyList<ContentFile> others, ContentFile draft)
    {
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(draft);
        return ContentReader.Read([.. others.Where(file => file.Path != draft.Path), draft]).Problems
            .Count(problem => problem.File == draft.Path && problem.HoldsBack);
    }

    /// <summary>Whether a procedure is too long for its orders to be looked at while somebody waits.</summary>
    /// <param name="steps">Its steps and decoys.</param>
    /// <param name="rules">Its rules.</param>
    public static bool IsTooLong(int steps, int rules) => steps > MostSteps || rules > MostRules;

    private static DraftReport WithFigures(DraftReport report, ContentFile draft, Answer? given)
    {
        var read = ProcedureDraft.Read(draft, ProcedureDemands.ToGrade);
        if (read.Procedure is not { } procedure) return report;
        report = report with { Procedure = procedure, IsTooLong = IsTooLong(procedure.Steps.Count + procedure.Decoys.Count, procedure.Rules.Count) };
        if (report.IsTooLong) return report;
        if (!NamesAreSound(procedure)) return report;
        var loop = RuleLoop.Of(procedure);
        return report with
        {
            Loop = [.. loop.Select(pair => new LoopLine(pair, Line(read, pair.Rule)))],
            Redundant = [.. ProcedureAnalysis.Redundant(procedure, loop).Select(rule => new RuleLine(rule, Line(read, rule)))],
            Kinds = [.. procedure.Kinds.Select(kind => Grader.For(procedure, kind)).Where(made => made.IsOk).Select(made => Figures(made.Value, given))],
        };
    }

    private static KindFigures Figures(Grader grader, Answer? given)
    {
        var orders = RightOrderDraw.Of(grader, Quick);
        return new(grader, orders.Accepted, orders.GuessChance, LikelyWrong.Right(grader),
            (given is null ? null : LikelyWrong.OfGiven(grader, given)) ?? LikelyWrong.Of(grader));
    }

    // What the engine finds wrong with an order is told for every kind of vehicle; names come first.
    private static bool NamesAreSound(Procedure procedure) =>
        ProcedureCheck.Problems(procedure).All(problem => problem.Code is AuthoringCodes.Loop or AuthoringCodes.Listing
            or AuthoringCodes.SettersUnordered or AuthoringCodes.SetterNotRequired or AuthoringCodes.StateOpen
            or AuthoringCodes.StateImpossible or AuthoringCodes.GapUnfillable);

    private static int Line(ProcedureDraft read, RuleId rule) => read.Places.Of(new(SubjectKind.Rule, rule.Value)).Line;
}

/// <summary>What an author is told of a draft.</summary>
/// <param name="Path">The file.</param>
/// <param name="AllProblems">The problems of all files that were looked at.</param>
/// <param name="Library">What was read; null where anything cannot be read.</param>
public sealed record DraftReport(string Path, IReadOnlyList<ContentProblem> AllProblems, ContentLibrary? Library)
{
    /// <summary>The problems of the draft, by line.</summary>
    public IReadOnlyList<ContentProblem> Problems { get; } = [.. AllProblems.Where(problem => problem.File == Path)];

    /// <summary>What holds back other files.</summary>
    public IEnumerable<ContentProblem> Elsewhere => AllProblems.Where(problem => problem.File != Path && problem.HoldsBack);

    /// <summary>What this draft's translations lack of it, or have too much: they are published together with it.</summary>
    public IEnumerable<ContentProblem> OutOfStep => Elsewhere.Where(problem => ContentFile.OriginalOf(problem.File) == Path);

    /// <summary>Whether the draft itself may be published.</summary>
    public bool IsFit => !Problems.Any(problem => problem.HoldsBack);

    /// <summary>The procedure; null where the draft is none, or too broken to be read.</summary>
    public Procedure? Procedure { get; init; }

    /// <summary>Whether the procedure is too long for what is told of its orders: then nothing is.</summary>
    public bool IsTooLong { get; init; }

    /// <summary>A shortest circle of its rules; none where there is no circle.</summary>
    public IReadOnlyList<LoopLine> Loop { get; init; } = [];

    /// <summary>The rules that the others already imply.</summary>
    public IReadOnlyList<RuleLine> Redundant { get; init; } = [];

    /// <summary>The figures for each kind of vehicle that has a right order.</summary>
    public IReadOnlyList<KindFigures> Kinds { get; init; } = [];
}

/// <summary>A part of a circle of rules, with the line of its rule.</summary>
/// <param name="Pair">The two steps and the rule.</param>
/// <param name="Line">The line, from 1.</param>
public sealed record LoopLine(LoopPair Pair, int Line);

/// <summary>A rule with its line.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Line">The line, from 1.</param>
public sealed record RuleLine(RuleId Rule, int Line);

/// <summary>What there is to know of a procedure on one kind of vehicle.</summary>
/// <param name="Grader">The procedure and its kind of vehicle.</param>
/// <param name="Accepted">How many right orders there are.</param>
/// <param name="GuessChance">The chance that somebody who knows nothing hits one.</param>
/// <param name="Right">A right order.</param>
/// <param name="Wrong">The likeliest wrong order; null where none is known.</param>
public sealed record KindFigures(
    Grader Grader, AcceptedOrders Accepted, double GuessChance, IReadOnlyList<Entry> Right, LikelyWrong? Wrong);

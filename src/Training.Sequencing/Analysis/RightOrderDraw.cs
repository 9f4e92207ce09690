using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;

namespace Training.Sequencing.Analysis;

/// <summary>
/// Draws right orders of the required steps from a seed, each as likely as the others, by the table of their counts; and
/// what can be made of them. Safe to share between threads.
/// </summary>
public sealed class RightOrderDraw
{
    private readonly CountedChoices counted;

    private RightOrderDraw(Grader grader, CountedChoices counted) => (Grader, this.counted) = (grader, counted);

    /// <summary>What the orders are graded by.</summary>
    public Grader Grader { get; }

    /// <summary>How many right orders there are to draw from.</summary>
    public AcceptedOrders Accepted => counted.Accepted;

    /// <summary>The chance that somebody who knows nothing hits a right order; see <see cref="AnalysisReport.GuessChance"/>.</summary>
    public double GuessChance => Analysis.GuessChance.Of(counted);

    /// <summary>Whether every right order is drawn as likely as the others; not so where they could not be counted.</summary>
    public bool IsUniform => counted.Accepted.IsExact;

    /// <summary>Counts the right orders of a procedure, to draw from them as often as one likes.</summary>
    /// <param name="grader">The procedure and its kind of vehicle.</param>
    /// <param name="limits">How much may be looked at.</param>
    public static RightOrderDraw Of(Grader grader, AnalysisLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(grader);
        return new(grader, CountedChoices.Of(grader.Layout, grader.Plans, limits ?? AnalysisLimits.Default));
    }

    /// <summary>A random right order with the least waits stated.</summary>
    /// <param name="lots">The lots.</param>
    public IReadOnlyList<Entry> Draw(SeededDraw lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        Entry[] bare = [.. counted.Draw(lots).Select(step => new Entry(Grader.Layout.IdOf(step)))];
        return Graded(new(bare)).Nearest;
    }

    /// <summary>
    /// What somebody has done who stopped part of the way through a random right order: at least one step, and at least
    /// one is left. Where it stops, whoever goes on can still finish rightly in every order that the rules leave.
    /// </summary>
    /// <param name="lots">The lots.</param>
    /// <returns>The entries; none where the drawn order can be stopped nowhere, as in a job of one step.</returns>
    public IReadOnlyList<Entry> DrawStart(SeededDraw lots)
    {
        var order = Draw(lots);
        foreach (var last in lots.Shuffle([.. Enumerable.Range(1, Math.Max(0, order.Count - 1))]))
        {
            Entry[] start = [.. order.Take(last)];
            if (Grader.CheckStart(start) is null) return start;
        }

        return [];
    }

    internal Verdicts.Verdict Graded(Answer answer) => Grader.Grade(answer).Value;
}

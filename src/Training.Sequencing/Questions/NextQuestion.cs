using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Questions;

/// <summary>
/// Which of these may be done now? Somebody stopped part of the way; offered are steps that are left, and decoys, some
/// right and some not. A step may be done now when all that must come before it is done, every fact that it needs has
/// its value and every gap before it is over.
/// </summary>
internal static class NextQuestion
{
    private const int MostOptions = 6;
    private const int Stops = 20;

    public static Outcome<ChoiceQuestion, Refusal> Draw(
        RightOrderDraw orders, IReadOnlyList<StepId> decoys, SeededDraw lots, IReadOnlyList<Entry> given)
    {
        for (var stop = 0; stop < (given.Count > 0 ? 1 : Stops); stop++)
        {
            var start = given.Count > 0 ? given : orders.DrawStart(lots);
            if (start.Count == 0 || orders.Grader.CheckStart(start) is not null) break;
            var moment = new Moment(orders, start);
            var (right, wrong) = (new List<Offer>(), new List<Offer>());
            foreach (var id in moment.Left.Concat(decoys))
            {
                var offer = moment.Weigh(id);
                if (offer.MayBeDone) right.Add(offer);
                else if (offer.Findings.Count > 0) wrong.Add(offer);
            }

            if (right.Count > 0 && wrong.Count > 0) return Question(start, Some(right, wrong, lots));
        }

        return new Refusal(given.Count > 0
            ? "After this start everything may be done now, or nothing may."
            : "Nothing in this procedure must wait for anything else.");
    }

    /// <summary>At least one of either sort, and besides any of the others.</summary>
    private static IReadOnlyList<Offer> Some(List<Offer> right, List<Offer> wrong, SeededDraw lots)
    {
        var (rights, wrongs) = (lots.Shuffle(right), lots.Shuffle(wrong));
        var others = lots.Shuffle([.. rights.Skip(1), .. wrongs.Skip(1)]);
        return lots.Shuffle([rights[0], wrongs[0], .. others.Take(MostOptions - 2)]);
    }

    private static ChoiceQuestion Question(IReadOnlyList<Entry> start, IReadOnlyList<Offer> offers)
    {
        Option[] options = [.. offers.Select((offer, at) => new Option(ChoiceQuestions.IdAt(at)) { Step = offer.Id })];
        return new(
            new(ChoiceKind.Next, start, options),
            [.. offers.Select((offer, at) => new Weighed(options[at].Id, offer.MayBeDone)
            {
                Risks = offer.Findings,
                Teaches = offer.Findings,
                Replayed = offer.Replayed,
            })],
            []);
    }

    private sealed record Offer(StepId Id, bool MayBeDone, IReadOnlyList<Finding> Findings, Answer Replayed);

    /// <summary>The moment at which somebody stopped.</summary>
    private sealed class Moment
    {
        private readonly RightOrderDraw orders;
        private readonly IReadOnlyList<Entry> start;
        private readonly IReadOnlyList<Entry> rest;
        private readonly Procedure procedure;

        public Moment(RightOrderDraw orders, IReadOnlyList<Entry> start)
        {
            (this.orders, this.start, procedure) = (orders, start, orders.Grader.Procedure);
            rest = orders.Graded(new([]) { Start = start }).Nearest;
        }

        /// <summary>The steps for this kind of vehicle that nobody has done yet.</summary>
        public IEnumerable<StepId> Left => orders.Grader.Layout.Steps.Select(step => step.Id)
            .Where(id => start.All(entry => entry.Step != id));

        public Offer Weigh(StepId id)
        {
            var now = new Entry(id)
            {
                Stated = procedure.Steps.Any(step => step.Id == id && step.IsWait) ? LongEnough : null,
            };
            var later = rest.Where(entry => entry.Step != id);
            var answer = new Answer([now, .. later]) { Start = start };
            // A start is possible just where each of its steps could be done at its time, whatever is chosen later on.
            if (orders.Grader.CheckStart([.. start, now]) is null) return new(id, true, [], answer);
            var verdict = orders.Graded(answer);
            return new(id, false, [.. verdict.Replay[0].Findings.Select(finding => verdict.Findings[finding])], answer);
        }

        /// <summary>As long as all gaps together, so that a wait is never wrong for its length.</summary>
        private Duration LongEnough => Duration.FromSeconds(
            Math.Min(Duration.Longest.Seconds, orders.Grader.Layout.Gaps.Sum(gap => gap.AtLeast!.Value)));
    }
}

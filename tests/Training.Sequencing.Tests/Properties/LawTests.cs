using CsCheck;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Properties;

/// <summary>What holds of every verdict, whatever the procedure and the answer.</summary>
public sealed class LawTests
{
    private static readonly Gen<(int Size, ulong Seed)> Cases = Gen.Select(Gen.Int[1, 14], Gen.ULong);

    [Fact]
    public void An_answer_is_accepted_just_where_the_mend_costs_nothing_and_the_score_is_full() =>
        ForAnswers(1000, (_, _, verdict) =>
        {
            Assert.Equal(verdict.Accepted, verdict.Cost == 0);
            Assert.Equal(verdict.Accepted, verdict.Score == 100m);
            Assert.InRange(verdict.Score, 0m, 100m);
        });

    [Fact]
    public void The_nearest_order_is_itself_accepted() =>
        ForAnswers(1000, (grader, answer, verdict) =>
        {
            var again = grader.Grade(answer with { Entries = verdict.Nearest }).Value;
            Assert.True(again.Accepted, again.Findings.Count > 0 ? again.Findings[0].Message : "");
        });

    [Fact]
    public void The_mend_turns_the_answer_into_the_nearest_order() =>
        ForAnswers(1000, (_, answer, verdict) =>
        {
            var mend = verdict.Mend;
            var left = answer.Entries.Where((_, e) => !mend.Drop.Contains(e + 1)).Select(entry => entry.Step).ToList();
            var staying = left.Except(mend.Moves).ToArray();
            Assert.Equal(staying, verdict.Nearest.Select(entry => entry.Step).Where(staying.Contains));
            Assert.Equal(left.Concat(mend.Add).ToHashSet(), verdict.Nearest.Select(entry => entry.Step).ToHashSet());
            Assert.Equal(verdict.Kept, staying.Length);
            foreach (var wait in mend.Waits)
                Assert.Equal(wait.Length, verdict.Nearest.Single(entry => entry.Step == wait.Step).Stated);
        });

    [Fact]
    public void An_observed_run_is_accepted_just_where_the_mend_costs_nothing() =>
        ForCases(1000, (procedure, grader, random) =>
        {
            var answer = RandomAnswer.Observed(RandomAnswer.Of(procedure, grader, random, mayStart: true), random);
            var verdict = grader.Grade(answer).Value;
            Assert.Equal(verdict.Accepted, verdict.Cost == 0);
            Assert.Equal(verdict.Accepted, verdict.Score == 100m);
        });

    [Fact]
    public void The_steps_that_are_kept_are_never_more_than_a_brute_search_over_all_right_orders_finds_nor_fewer() =>
        Gen.Select(Gen.Int[1, 8], Gen.ULong).Sample(
            one =>
            {
                var (procedure, grader) = RandomProcedure.Of(one.Item1, one.Item2);
                var answer = RandomAnswer.Of(procedure, grader, new((int)one.Item2));
                var orders = RightOrders.For(procedure, grader.Variant, answer.Entries.Select(entry => entry.Step));
                var best = orders.All().Max(order => Common(order, orders, answer));
                Assert.Equal(best, grader.Grade(answer).Value.Kept);
            },
            iter: 400);

    [Fact]
    public void Moving_one_entry_never_changes_what_is_kept_by_more_than_one() =>
        ForAnswers(800, (grader, answer, verdict) =>
        {
            // Where a one-of group is given twice, the move may change which member counts, and with it the step set.
            if (answer.Entries.Count < 2 || verdict.Findings.Any(finding => finding.Kind == FindingKind.ExtraChoice)) return;
            var random = new Random(answer.Entries.Count);
            var entries = answer.Entries.ToList();
            var from = random.Next(entries.Count);
            var moved = entries[from];
            entries.RemoveAt(from);
            entries.Insert(random.Next(entries.Count + 1), moved);
            var after = grader.Grade(answer with { Entries = entries }).Value;
            Assert.InRange(after.Kept - verdict.Kept, -1, 1);
        });

    [Fact]
    public void An_order_is_accepted_just_where_the_rules_themselves_allow_it() =>
        ForCases(1500, (procedure, grader, random) =>
        {
            var orders = RightOrders.For(procedure, grader.Variant, procedure.Steps.Select(step => step.Id));
            var right = orders.Some(random);
            Assert.True(IsAccepted(grader, orders, right));
            var spoilt = right.ToArray();
            for (var swap = random.Next(1, 4); swap > 0; swap--)
            {
                var at = random.Next(spoilt.Length);
                var other = random.Next(spoilt.Length);
                (spoilt[at], spoilt[other]) = (spoilt[other], spoilt[at]);
            }

            Assert.Equal(orders.IsRight(spoilt), IsAccepted(grader, orders, spoilt));
        });

    [Fact]
    public void Grading_the_same_answer_twice_gives_the_same_verdict() =>
        ForAnswers(300, (grader, answer, verdict) =>
            Assert.Equal(
                VerdictJson.Write(verdict),
                VerdictJson.Write(Grader.For(grader.Procedure, grader.Variant).Value.Grade(answer).Value)));

    [Fact]
    public void Whatever_the_types_allow_is_graded_by_the_laws_or_refused_with_a_sentence() =>
        ForCases(1500, (procedure, grader, random) =>
        {
            var answer = RandomAnswer.Wild(procedure, random);
            var outcome = grader.Grade(answer);
            if (!outcome.IsOk)
            {
                Assert.EndsWith(".", outcome.Fault.Sentence);
                return;
            }

            Assert.Equal(outcome.Value.Accepted, outcome.Value.Cost == 0);
            Assert.NotEmpty(VerdictJson.Write(outcome.Value));
            Assert.True(grader.Grade(new(outcome.Value.Nearest) { Start = answer.Start }).Value.Findings
                .All(finding => finding.Kind == FindingKind.TooSoon && answer.Entries[0].Observed is not null));
        });

    [Fact]
    public void Every_finding_is_told_to_the_entry_that_caused_it() =>
        ForAnswers(500, (_, _, verdict) =>
        {
            var told = verdict.Replay.SelectMany(entry => entry.Findings).Order();
            var caused = Enumerable.Range(0, verdict.Findings.Count)
                .Where(finding => verdict.Findings[finding].Kind != FindingKind.Missing);
            Assert.Equal(caused, told);
        });

    private static bool IsAccepted(Grader grader, RightOrders orders, int[] order) =>
        grader.Grade(new([.. order.Select(step => RandomAnswer.LongEnough(orders.Steps[step]))])).Value.Accepted;

    /// <summary>The longest run of entries that stand in a right order, by dynamic programming.</summary>
    private static int Common(int[] order, RightOrders orders, Answer answer)
    {
        var entries = answer.Entries.Select(entry => entry.Step).ToArray();
        var longest = new int[order.Length + 1, entries.Length + 1];
        for (var s = 0; s < order.Length; s++)
            for (var e = 0; e < entries.Length; e++)
                longest[s + 1, e + 1] = orders.Steps[order[s]].Id == entries[e]
                    ? longest[s, e] + 1
                    : Math.Max(longest[s, e + 1], longest[s + 1, e]);
        return longest[order.Length, entries.Length];
    }

    private static void ForAnswers(int iterations, Action<Grader, Answer, Verdict> law) =>
        ForCases(iterations, (procedure, grader, random) =>
        {
            var answer = RandomAnswer.Of(procedure, grader, random, mayStart: random.Next(3) == 0);
            law(grader, answer, grader.Grade(answer).Value);
        });

    private static void ForCases(int iterations, Action<Procedures.Procedure, Grader, Random> law) =>
        Cases.Sample(
            one =>
            {
                var (procedure, grader) = RandomProcedure.Of(one.Size, one.Seed);
                law(procedure, grader, new((int)one.Seed));
            },
            iter: iterations);
}

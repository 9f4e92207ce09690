using CsCheck;
using Training.Sequencing.Comparing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Comparing;

/// <summary>What holds of every comparison, whatever the procedures.</summary>
public sealed class ComparingLawTests
{
    private static readonly Gen<(int Size, ulong Seed)> Cases = Gen.Select(Gen.Int[2, 7], Gen.ULong);

    [Fact]
    public void Equal_revisions_say_nothing() => Cases.Sample(one =>
    {
        var comparison = ProcedureComparison.Of(RandomProcedure.Of(one.Size, one.Seed).Procedure, RandomProcedure.Of(one.Size, one.Seed).Procedure);
        Assert.True(comparison.IsSame);
        Assert.Empty(comparison.Orders);
    }, iter: 300);

    [Fact]
    public void Revisions_that_differ_in_anything_say_something() => Pairs(2000, (before, after) =>
        Assert.Equal(Written(before) == Written(after), ProcedureComparison.Of(before, after).IsSame));

    [Fact]
    public void What_a_sentence_is_about_stands_in_its_gaps() => Pairs(1000, (before, after) =>
    {
        string[] plain = ["The title has changed.", "The steps are listed in another order."];
        var comparison = ProcedureComparison.Of(before, after);
        Sentence[] said = [.. comparison.Changes.Select(change => change.Said), .. comparison.Orders.SelectMany(orders => orders.Said.Concat(orders.Effects.Select(effect => effect.Said)))];
        Assert.All(said, sentence => Assert.True(sentence.Arguments.Count > 0 || plain.Contains(sentence.Template), sentence.Template));
        Assert.All(said, sentence => Assert.DoesNotMatch("s[0-9]|Do [0-9]", sentence.Template));
    });

    [Fact]
    public void What_is_gone_one_way_is_new_the_other_way() => Pairs(1000, (before, after) =>
    {
        var (there, back) = (ProcedureComparison.Of(before, after), ProcedureComparison.Of(after, before));
        Assert.Equal(Subjects(there, ChangeKind.Gone), Subjects(back, ChangeKind.New));
        Assert.Equal(Subjects(there, ChangeKind.New), Subjects(back, ChangeKind.Gone));
        Assert.Equal(Subjects(there, ChangeKind.Changed), Subjects(back, ChangeKind.Changed));
        foreach (var orders in there.Orders)
        {
            var turned = back.Orders.Single(other => other.Variant == orders.Variant);
            Assert.Equal((orders.Before, orders.After, orders.BecameRight, orders.BecameWrong), (turned.After, turned.Before, turned.BecameWrong, turned.BecameRight));
        }
    });

    [Fact]
    public void The_counts_are_those_of_all_orders_looked_through_one_by_one()
    {
        var (compared, changed) = (0, 0);
        Pairs(2000, (before, after) =>
        {
            foreach (var orders in ProcedureComparison.Of(before, after).Orders)
            {
                var (old, now) = AllCommonOrders.Of(before, after, orders.Variant);
                Assert.True(orders.IsExact);
                Assert.Equal(old.Count, (int)orders.Before.Count);
                Assert.Equal(now.Count, (int)orders.After.Count);
                Assert.Equal(old.Intersect(now).Count(), (int)orders.Both.Count);
                Assert.Equal(now.Except(old).Count(), (int)orders.BecameRight.Count);
                Assert.Equal(old.Except(now).Count(), (int)orders.BecameWrong.Count);
                Interlocked.Increment(ref compared);
                if (orders.NowRight is not null || orders.NowWrong is not null) Interlocked.Increment(ref changed);
            }
        });
        Assert.True(compared > 500 && changed > 200, $"{compared} were compared, {changed} of them had orders that changed.");
    }

    [Fact]
    public void Each_example_is_right_under_the_one_and_wrong_under_the_other() => Pairs(1500, (before, after) =>
    {
        foreach (var orders in ProcedureComparison.Of(before, after).Orders)
        {
            Assert.Equal(orders.BecameRight.Count.IsZero, orders.NowRight is null);
            Assert.Equal(orders.BecameWrong.Count.IsZero, orders.NowWrong is null);
            Check(orders.NowRight, after, before);
            Check(orders.NowWrong, before, after);

            void Check(ChangedOrder? example, Procedure right, Procedure wrong)
            {
                if (example is null) return;
                var (old, now) = AllCommonOrders.Of(right, wrong, orders.Variant);
                var order = string.Join(' ', example.Order);
                Assert.Contains(order, old);
                Assert.DoesNotContain(order, now);
                var accepted = Grader.For(right, Known(right, orders.Variant)).Value.Grade(new(example.AsRight)).Value;
                Assert.True(accepted.Accepted);
                Assert.Equal(example.Order, example.AsRight.Select(entry => entry.Step).Where(example.Order.Contains));
                var judged = Grader.For(wrong, Known(wrong, orders.Variant)).Value.Grade(new(example.AsWrong)).Value;
                Assert.False(judged.Accepted);
                Assert.Contains(judged.Findings, finding => finding.Kind == example.Why.Kind && finding.Subject == example.Why.Subject);
                Assert.DoesNotContain(judged.Findings, finding => finding.Kind == FindingKind.Missing);
                Assert.Equal(example.Order, example.AsWrong.Select(entry => entry.Step).Where(example.Order.Contains));
            }
        }
    });

    internal static VariantId? Known(Procedure procedure, VariantId? variant) => procedure.Variants.Count == 0 ? null : variant;

    /// <summary>Two revisions: of one random procedure with some of everything that an author does to it, or two at random.</summary>
    private static void Pairs(int cases, Action<Procedure, Procedure> check) => Cases.Sample(
        one =>
        {
            var random = new Random(one.Seed.GetHashCode());
            var (before, _) = RandomProcedure.Of(one.Size, one.Seed);
            var after = random.Next(4) == 0 ? RandomProcedure.Of(random.Next(1, 8), one.Seed + 1).Procedure : RandomRevision.Of(before, random);
            check(before, after);
        },
        iter: cases);

    private static string[] Subjects(ProcedureComparison comparison, ChangeKind kind) => [.. comparison.Changes
        .Where(change => change.Kind == kind).Select(change => $"{change.Subject.Kind} {change.Subject.Id}").Order(StringComparer.Ordinal)];

    /// <summary>All that a procedure says, lists whose order means nothing put in one order.</summary>
    private static string Written(Procedure procedure)
    {
        string[] parts =
        [
            $"{procedure.Id} {procedure.Title} {procedure.Revision} {string.Join(',', procedure.Variants.Take(1))}",
            .. procedure.Variants.Select(variant => variant.Value).Order(StringComparer.Ordinal),
            .. procedure.Facts.Select(fact => $"{fact.Id} {string.Join(',', fact.Values)}").Order(StringComparer.Ordinal),
            .. procedure.Steps.Select(step => $"{step.Id} {step.Do} {step.Takes} {step.IsWait} {step.IsOptional} {step.Choice} {string.Join(',', step.Variants)} {string.Join(',', step.Sets)} {step.Stakes}"),
            .. procedure.Decoys.Select(decoy => decoy.ToString()).Order(StringComparer.Ordinal),
            .. procedure.Rules.Select(Written).Order(StringComparer.Ordinal),
        ];
        return string.Join('\n', parts);
    }

    private static string Written(Rule rule) => $"{rule.Id} {rule.Because} {rule.Otherwise} {rule.Stakes} " + (rule switch
    {
        OrderRule order => $"{Sorted(order.First)} < {Sorted(order.Then)} {order.AtLeast}",
        StateRule state => $"{state.Step} while {Sorted(state.OnlyWhile)}",
        _ => "",
    });

    private static string Sorted<T>(IEnumerable<T> things) => string.Join(',', things.Select(thing => thing!.ToString()).Distinct().Order(StringComparer.Ordinal));
}

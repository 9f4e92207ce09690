using CsCheck;
using Training.Sequencing.Tests.Generating;

namespace Training.Sequencing.Oracle.Tests;

/// <summary>The engine's exact mend against the optimum of a general constraint solver (Google OR-Tools, CP-SAT).</summary>
public sealed class KeptAgainstTheSolverTests
{
    [Fact]
    public void As_many_entries_are_kept_as_the_solver_proves_possible()
    {
        var proven = 0;
        Gen.Select(Gen.Int[5, 40], Gen.ULong).Sample(
            one =>
            {
                var (procedure, grader) = RandomProcedure.Of(one.Item1, one.Item2);
                var random = new Random((int)one.Item2);
                var answer = RandomAnswer.Of(procedure, grader, random);
                for (var swap = random.Next(8); swap > 0; swap--) answer = RandomAnswer.Swapped(answer, random);
                var orders = RightOrders.For(procedure, grader.Variant, answer.Entries.Select(entry => entry.Step));
                if (SolvedMend.Kept(procedure, orders, answer) is not { } best) return;
                proven++;
                Assert.Equal(best, grader.Grade(answer).Value.Kept);
            },
            iter: 40,
            threads: 1);
        Assert.True(proven > 20, $"The solver proved only {proven} optima; the comparison is worth little.");
    }
}

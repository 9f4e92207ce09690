using CsCheck;
using Training.Sequencing.Tests.Generating;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Properties;

/// <summary>The laws are worth what the random cases show: everything that can happen does.</summary>
public sealed class CoverageOfRandomCasesTests
{
    [Fact]
    public void Random_cases_show_every_kind_of_finding_and_of_mend()
    {
        var seen = new Dictionary<string, int>();
        void See(string what, bool isThere) => seen[what] = seen.GetValueOrDefault(what) + (isThere ? 1 : 0);
        Gen.Select(Gen.Int[4, 14], Gen.ULong).Sample(
            one =>
            {
                var (procedure, grader) = RandomProcedure.Of(one.Item1, one.Item2);
                var answer = RandomAnswer.Of(procedure, grader, new((int)one.Item2), mayStart: one.Item2 % 3 == 0);
                var verdict = grader.Grade(answer).Value;
                foreach (var kind in Enum.GetValues<FindingKind>())
                    See(kind.ToString(), verdict.Findings.Any(finding => finding.Kind == kind));
                See("accepted", verdict.Accepted);
                See("several moves", verdict.Mend.Moves.Count > 1);
                See("drops", verdict.Mend.Drop.Count > 0);
                See("adds", verdict.Mend.Add.Count > 0);
                See("waits", verdict.Mend.Waits.Count > 0);
                See("start", answer.Start.Count > 0);
                See("late", verdict.Findings.Any(finding =>
                    finding.Kind == FindingKind.Order && finding.Places.Contains(0)));
                See("gap over the start", verdict.Findings.Any(finding =>
                    finding.Kind == FindingKind.TooSoon && finding.Places.Contains(0)));
                See("state rules", procedure.Rules.OfType<Procedures.StateRule>().Any());
                See("groups", procedure.Steps.Any(step => step.Choice is not null));
            },
            iter: 1500,
            threads: 1);
        Assert.All(seen, pair => Assert.True(pair.Value > 0, pair.Key));
        Assert.True(seen["state rules"] > 200, $"Only {seen["state rules"]} of 1500 have state rules.");
        TestContext.Current.TestOutputHelper?.WriteLine(string.Join(", ", seen));
    }
}

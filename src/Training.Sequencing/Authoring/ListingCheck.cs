using Training.Sequencing.Findings;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>
/// The law: the listing is itself a right order. Where it is not, a loop or an impossible state may be the reason, and
/// is told instead.
/// </summary>
internal static class ListingCheck
{
    private const int MostTold = 20;

    /// <summary>What the listing breaks.</summary>
    public static List<AuthoringProblem> Faults(Layout layout)
    {
        var faults = new List<AuthoringProblem>();
        foreach (var link in layout.Links)
        {
            if (link.First < link.Then || (link.First != link.Then && layout.AreAlternatives(link.First, link.Then))) continue;
            faults.Add(Fault(link.Rule,
                $"rule “{link.Rule.Id}” asks for “{layout.IdOf(link.First)}” before “{layout.IdOf(link.Then)}”"));
        }

        var values = new int[layout.Facts.Count];
        for (var s = 0; s < layout.StepCount; s++)
        {
            foreach (var need in layout.NeedsOf[s])
                if (!WrongState.Holds(need, values))
                    faults.Add(Fault(need.Rule, $"rule “{need.Rule.Id}” forbids “{layout.IdOf(s)}” where it stands"));
            foreach (var setting in layout.Facts.Sets[s]) values[setting.Fact] = setting.Value;
        }

        return faults;
    }

    /// <summary>Tells of what is wrong with the listing alone.</summary>
    public static void Tell(List<AuthoringProblem> faults, ProblemList problems)
    {
        foreach (var fault in faults.Take(MostTold)) problems.Add(fault);
    }

    /// <summary>Tells of the loops and the impossible states behind a wrong listing; false where there are none.</summary>
    public static bool TellLoops(Layout layout, ProblemList problems)
    {
        var before = problems.Count;
        foreach (var steps in Choices.Of(layout, Choices.Most(layout)).Take(Choices.MostCombinations))
        {
            if (Plan.TryMake(layout, steps, out var fault) is null) PlanFaults.Tell(layout, fault!, problems);
            if (problems.Count - before >= MostTold) break;
        }

        return problems.Count > before;
    }

    private static AuthoringProblem Fault(Rule rule, string why) => new(
        AuthoringCodes.Listing,
        $"The listing is not a right order: {why}. Change the listing or the rule.",
        new(SubjectKind.Rule, rule.Id.Value));
}

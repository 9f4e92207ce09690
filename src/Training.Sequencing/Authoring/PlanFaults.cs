using System.Globalization;
using Training.Sequencing.Layouts;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>Says in a sentence why a step set has no plan, and what to do.</summary>
internal static class PlanFaults
{
    public static void Tell(Layout layout, PlanFault fault, ProblemList problems)
    {
        switch (fault)
        {
            case PlanFault.Loop loop:
                problems.Add(AuthoringCodes.Loop, LoopSentence(layout, loop), Subject(loop.Pairs[0].Rule));
                break;
            case PlanFault.SettersUnordered unordered:
                problems.Add(AuthoringCodes.SettersUnordered,
                    $"Rule “{unordered.Need.Rule.Id}” needs the fact “{layout.Facts.NameOf(unordered.Fact)}”, which "
                    + $"“{layout.IdOf(unordered.One)}” and “{layout.IdOf(unordered.Other)}” both set in no fixed order. "
                    + "Add a first/then rule between them.",
                    SubjectKind.Fact, layout.Facts.NameOf(unordered.Fact));
                break;
            case PlanFault.StateOpen open:
                problems.Add(AuthoringCodes.StateOpen, OpenSentence(layout, open), Subject(open.Need.Rule));
                break;
            case PlanFault.StateImpossible impossible:
                problems.Add(AuthoringCodes.StateImpossible,
                    $"Rule “{impossible.Need.Rule.Id}” can never hold: where “{layout.IdOf(impossible.Need.Step)}” may "
                    + $"stand, “{layout.Facts.NameOf(impossible.Setting.Fact)}” is never "
                    + $"“{layout.Facts.ValueOf(impossible.Setting)}”{Setters(layout, impossible.Setting.Fact)}. "
                    + "Change the rule, or the first/then rules between these steps.",
                    Subject(impossible.Need.Rule));
                break;
        }
    }

    private static string LoopSentence(Layout layout, PlanFault.Loop loop)
    {
        var pairs = loop.Pairs.Select(pair =>
            $"“{layout.IdOf(pair.First)}” before “{layout.IdOf(pair.Then)}” (rule “{pair.Rule.Id}”)");
        return string.Create(CultureInfo.InvariantCulture,
            $"The rules run in a circle: {string.Join(", ", pairs)}. Take one of them back.");
    }

    private static string OpenSentence(Layout layout, PlanFault.StateOpen open)
    {
        var stretches = open.Stretches.Where(stretch => stretch.Value == open.Setting.Value).Select(stretch =>
            stretch.Opener < 0 ? $"before “{layout.IdOf(stretch.Ender)}”"
            : stretch.Ender < 0 ? $"after “{layout.IdOf(stretch.Opener)}”"
            : $"between “{layout.IdOf(stretch.Opener)}” and “{layout.IdOf(stretch.Ender)}”");
        return $"Rule “{open.Need.Rule.Id}” leaves open when “{layout.IdOf(open.Need.Step)}” is done: "
            + $"“{layout.Facts.NameOf(open.Setting.Fact)}” is “{layout.Facts.ValueOf(open.Setting)}” "
            + $"{string.Join(", and again ", stretches)}. Add a first/then rule between these steps.";
    }

    private static string Setters(Layout layout, int fact)
    {
        var setters = Enumerable.Range(0, layout.StepCount).Where(step => layout.Facts.SetBy(step, fact) >= 0)
            .Select(step => $"“{layout.IdOf(step)}”").ToArray();
        return setters.Length == 0 ? " (no step sets it)" : $" (it is set by {string.Join(", ", setters)})";
    }

    private static ProblemSubject Subject(Rule rule) => new(SubjectKind.Rule, rule.Id.Value);
}

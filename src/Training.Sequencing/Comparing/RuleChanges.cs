using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Comparing;

/// <summary>What must hold of the order, and why.</summary>
internal static class RuleChanges
{
    public static void Find(Procedure before, Procedure after, ChangeList changes) => ChangeList.Pair(
        before.Rules, after.Rules, rule => rule.Id,
        gone => changes.Gone(SubjectKind.Rule, gone.Id.Value, $"The rule “{gone.Id}” is gone: {ChangeWords.Of(gone, before)}."),
        isNew => changes.New(SubjectKind.Rule, isNew.Id.Value, $"There is a new rule, “{isNew.Id}”: {ChangeWords.Of(isNew, after)}."),
        (old, now) =>
        {
            var id = now.Id.Value;
            if (!AsksTheSame(old, now)) changes.Changed(SubjectKind.Rule, id, Asked(old, now, before, after));
            changes.Words(SubjectKind.Rule, id, old.Because, now.Because, $"Why the rule “{now.Id}” holds is told otherwise.");
            changes.Words(SubjectKind.Rule, id, old.Otherwise, now.Otherwise, $"What comes of breaking the rule “{now.Id}” is told otherwise.");
            if (old.Stakes != now.Stakes)
                changes.Changed(SubjectKind.Rule, id,
                    $"What comes of breaking the rule “{now.Id}”: {ChangeWords.Of(now.Stakes)}. Before, it was: {ChangeWords.Of(old.Stakes)}.");
        });

    /// <summary>Whether two rules ask the same of an order; in which order their steps are named does not matter.</summary>
    public static bool AsksTheSame(Rule old, Rule now) => (old, now) switch
    {
        (OrderRule a, OrderRule b) => a.AtLeast == b.AtLeast && a.First.ToHashSet().SetEquals(b.First) && a.Then.ToHashSet().SetEquals(b.Then),
        (StateRule a, StateRule b) => a.Step == b.Step && a.OnlyWhile.ToHashSet().SetEquals(b.OnlyWhile),
        _ => false,
    };

    // Each sentence stands by itself: in a choice between them the compiler would make plain texts of them.
    private static Sentence Asked(Rule old, Rule now, Procedure before, Procedure after)
    {
        if (old is not OrderRule a || now is not OrderRule b || !SameSteps(a, b))
            return $"The rule “{now.Id}” says now: {ChangeWords.Of(now, after)}. Before, it said: {ChangeWords.Of(old, before)}.";
        if (b.AtLeast is not { } time)
            return $"The rule “{now.Id}” no longer asks for a time between; it asked for at least {new SpokenTime(a.AtLeast!.Value.Seconds)}.";
        if (a.AtLeast is not { } was)
            return $"The rule “{now.Id}” asks for at least {new SpokenTime(time.Seconds)} between now; it asked for no time.";
        return $"The rule “{now.Id}” asks for at least {new SpokenTime(time.Seconds)} between now; it asked for {new SpokenTime(was.Seconds)}.";
    }

    private static bool SameSteps(OrderRule a, OrderRule b) => AsksTheSame(a with { AtLeast = null }, b with { AtLeast = null });
}

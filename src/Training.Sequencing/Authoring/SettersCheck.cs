using Training.Sequencing.Layouts;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Authoring;

/// <summary>The law: a step that sets a fact which some <c>only-while</c> names is done in every right order.</summary>
internal static class SettersCheck
{
    /// <summary>Tells of every setter that is not required; true where there is none.</summary>
    public static bool Find(Layout layout, ProblemList problems)
    {
        var before = problems.Count;
        var needed = layout.Needs.SelectMany(need => need.Settings).Select(setting => setting.Fact).Distinct().ToArray();
        foreach (var fact in needed)
        {
            for (var s = 0; s < layout.StepCount; s++)
            {
                if (layout.IsRequired(s) || layout.Facts.SetBy(s, fact) < 0) continue;
                problems.Add(AuthoringCodes.SetterNotRequired,
                    $"Step “{layout.IdOf(s)}” sets the fact “{layout.Facts.NameOf(fact)}”, which a rule names under "
                    + "“only-while”; it must be done always, so it can be neither optional nor one of a group.",
                    SubjectKind.Step, layout.IdOf(s).Value);
            }
        }

        return problems.Count == before;
    }
}

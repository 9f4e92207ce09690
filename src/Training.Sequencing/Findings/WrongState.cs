using Training.Sequencing.Layouts;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>The law: a step is done only while each fact that it needs has the value that it needs.</summary>
internal static class WrongState
{
    public static void Find(Attempt attempt, FindingList findings)
    {
        var layout = attempt.Layout;
        if (layout.Needs.Length == 0) return;
        for (var e = 0; e < attempt.Roles.Length; e++)
        {
            var number = attempt.Reading.Entries[e];
            if (number >= layout.StepCount) continue;
            var values = attempt.Replay.ValuesBefore(e);
            foreach (var need in layout.NeedsOf[number])
            {
                if (!Holds(need, values)) findings.Add(Of(layout, need, values, e), e);
            }
        }
    }

    /// <summary>Whether every fact has the value that is needed.</summary>
    public static bool Holds(Need need, int[] values)
    {
        foreach (var setting in need.Settings)
            if (values[setting.Fact] != setting.Value) return false;
        return true;
    }

    private static Finding Of(Layout layout, Need need, int[] values, int place) =>
        new(FindingKind.State, need.Rule.Id.Value, new[] { layout.IdOf(need.Step) }, new[] { place + 1 }, need.Rule.Stakes,
            new StateText(layout, need, values, place));

    private sealed class StateText(Layout layout, Need need, int[] values, int place) : FindingText
    {
        public override FindingTelling Tell(Finding finding)
        {
            var broken = need.Settings.Where(setting => values[setting.Fact] != setting.Value).ToArray();
            return Sentences.Tell(
                $"When “{layout.Named(need.Step)}” was done ({Sentences.Place(place)}), {Sentences.And(broken.Select(Was))}.",
                need.Rule, $"Do it only while {Sentences.And(broken.Select(Must))}.");
        }

        private Sentence Was(Setting setting) =>
            $"{layout.Facts.IdOf(setting.Fact)} was “{layout.Facts.Named(setting with { Value = values[setting.Fact] })}”";

        private Sentence Must(Setting setting) => $"{layout.Facts.IdOf(setting.Fact)} is “{layout.Facts.Named(setting)}”";
    }
}

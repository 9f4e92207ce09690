using Training.Sequencing.Analysis;
using Training.Sequencing.Answers;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Sequencing.Questions;

/// <summary>
/// How long must the wait be at least? What is done within the gap counts towards it. Whoever waits too short is judged
/// by what that does; too long is wrong, and safe.
/// </summary>
internal static class WaitQuestion
{
    private const int OptionCount = 4;

    public static Outcome<ChoiceQuestion, Refusal> Draw(RightOrderDraw orders, SeededDraw lots)
    {
        var order = orders.Draw(lots);
        int[] waits = [.. Enumerable.Range(0, order.Count).Where(at => order[at].Stated > Duration.Zero)];
        if (waits.Length == 0) return new Refusal("No step of this procedure has to be waited for.");
        var wait = waits[lots.Below(waits.Length)];
        var least = order[wait].Stated!.Value;
        var until = orders.Graded(With(order, wait, Duration.Zero)).Replay.First(entry => entry.Findings.Count > 0).Place;
        Duration[] times = [.. Times(orders, least, lots).Order()];
        var options = times.Select((time, at) => new Option(ChoiceQuestions.IdAt(at)) { Time = time }).ToArray();
        var waited = times.Select(time => With(order, wait, time)).ToArray();
        var findings = waited.Select(answer => orders.Graded(answer).Findings).ToArray();
        // Whoever is right, or waits longer, is told why the next shorter time would not have done.
        var nearly = findings[Array.IndexOf(times, least) - 1];
        return new ChoiceQuestion(
            new(ChoiceKind.Wait, [.. order.Take(wait)], options)
            {
                About = order[wait].Step,
                Then = [.. order.Take(until).Skip(wait + 1)],
            },
            [.. options.Select((option, at) => new Weighed(option.Id, times[at] == least)
            {
                Risks = findings[at],
                Teaches = findings[at].Count > 0 ? findings[at] : nearly,
                TeachesAlways = true,
                Replayed = waited[at],
            })],
            []);
    }

    private static Answer With(IReadOnlyList<Entry> order, int wait, Duration time) =>
        new([.. order.Select((entry, at) => at == wait ? entry with { Stated = time } : entry)]);

    /// <summary>The least time among others, at least one of them shorter and one longer.</summary>
    private static List<Duration> Times(RightOrderDraw orders, Duration least, SeededDraw lots)
    {
        // The time of a rule itself, without what is done meanwhile, is what people take who do not reckon.
        var tempting = orders.Grader.Layout.Gaps.Select(gap => gap.AtLeast!.Value);
        var all = tempting.Concat([Down(least.Seconds / 3), Down(least.Seconds / 2), Up(least.Seconds * 2), Up(least.Seconds * 3)])
            .Where(time => time != least.Seconds && time <= Duration.Longest.Seconds)
            .Distinct().Select(Duration.FromSeconds).ToArray();
        var shorter = lots.Shuffle([.. all.Where(time => time < least)]);
        var longer = lots.Shuffle([.. all.Where(time => time > least)]);
        var (first, last) = (shorter.Count > 0 ? shorter[0] : Duration.Zero, longer.Count > 0 ? longer[0] : Duration.Longest);
        var others = lots.Shuffle([.. shorter.Concat(longer).Where(time => time != first && time != last)]);
        return [least, first, last, .. others.Take(OptionCount - 3)];
    }

    // As people say times: in whole seconds, above a quarter of a minute in steps of five.
    private static decimal Down(decimal seconds) => Math.Floor(seconds / Step(seconds)) * Step(seconds);

    private static decimal Up(decimal seconds) => Math.Ceiling(seconds / Step(seconds)) * Step(seconds);

    private static decimal Step(decimal seconds) => seconds < 15 ? 1 : 5;
}

using Microsoft.Extensions.DependencyInjection;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using static Training.Records.Demo.DemoHistory;

namespace Training.Records.Demo;

/// <summary>
/// What people of the demo got wrong when they began to practise, so that the results show something: faults that
/// beginners make (the colleague's advice of the scenario is followed, a proof forgotten, a wait cut short). All invented.
/// </summary>
internal sealed class DemoPractice(IServiceProvider services, DemoClock clock)
{
    /// <summary>Who gets what wrong in which scenario, try by try; a right order ends each row by itself.</summary>
    private static readonly (DemoSignIn Person, string Scenario, string[] Faults)[] Tries =
    [
        (DemoPeople.Current, "customer-waiting", ["short-wait", "no-last-proof"]),
        (DemoPeople.Due, "customer-waiting", ["isolator-first", "short-wait"]),
        (DemoPeople.Expired, "customer-waiting", ["isolator-first", "colleagues-lock"]),
        (DemoPeople.Suspended, "customer-waiting", ["no-last-proof"]),
        (DemoPeople.Awaiting, "customer-waiting", ["isolator-first"]),
        (DemoPeople.Foreman, "customer-waiting", []),
        (DemoPeople.OtherCurrent, "customer-waiting", ["short-wait"]),
        (DemoPeople.Current, "batteries-out-for-welding", []),
        (DemoPeople.Due, "batteries-out-for-welding", ["positive-first"]),
        (DemoPeople.Expired, "batteries-out-for-welding", ["positive-first", "bare-hands"]),
        (DemoPeople.Suspended, "batteries-out-for-welding", ["positive-first"]),
        (DemoPeople.Awaiting, "batteries-out-for-welding", ["bare-hands"]),
        (DemoPeople.Foreman, "batteries-out-for-welding", ["positive-first"]),
        (DemoPeople.OtherCurrent, "batteries-out-for-welding", ["positive-first"]),
    ];

    /// <summary>The tries of a person, an answer after another; scenarios that the content does not have are left out.</summary>
    public async Task Begin(DemoSignIn person, Actor actor)
    {
        foreach (var (_, scenario, faults) in Tries.Where(row => row.Person == person))
            foreach (var fault in faults.Append("")) await Try(actor, new(scenario), fault);
    }

    private async Task Try(Actor actor, ScenarioId scenario, string fault)
    {
        var served = services.GetRequiredService<Library>().Current;
        if (served.Content.FindScenario(scenario)?.Kinds.Contains(QuestionKind.Order) != true) return;
        var practice = services.GetRequiredService<Practice>();
        clock.At += NodaTime.Duration.FromMinutes(6);
        var asked = Done(await practice.Draw(actor, scenario));
        var question = Done(await services.GetRequiredService<Questions>().Draw(served, scenario, QuestionKind.Order, new(asked.Ticket.Seed)));
        var right = AnswerJson.Parse(question.RightAnswer()).Value;
        Done(await practice.HandIn(actor, new(Guid.NewGuid(), asked.Ticket, AnswerJson.Write(right with { Entries = Spoilt(right.Entries, fault) }))));
    }

    private static IReadOnlyList<Entry> Spoilt(IReadOnlyList<Entry> right, string fault) => fault switch
    {
        "isolator-first" => Moved(right, "open-isolator-truck", "wait-empty"),
        "short-wait" => [.. right.Select(entry => entry.Stated is null ? entry : entry with { Stated = Duration.FromSeconds(30) })],
        "no-last-proof" => [.. right.Where(entry => entry.Step.Value != "prove-again")],
        "colleagues-lock" => [.. right.Select(entry => entry.Step.Value == "lock" ? new(new("share-lock")) : entry)],
        "positive-first" => Moved(right, "positive-off", "negative-off"),
        "bare-hands" => Moved(right, "open-cover", "protect"),
        _ => right,
    };

    /// <summary>The order with one step done just before another one.</summary>
    private static IReadOnlyList<Entry> Moved(IReadOnlyList<Entry> right, string step, string before)
    {
        if (right.FirstOrDefault(entry => entry.Step.Value == step) is not { } moved) return right;
        return [.. right.Where(entry => entry != moved).SelectMany(entry => entry.Step.Value == before ? [moved, entry] : new[] { entry })];
    }
}

using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Training.Records.Accounts;
using Training.Records.Practising;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Json;

namespace Training.Browser.Tests;

/// <summary>
/// What technicians make of the procedure that the trainer's page has written, handed in through the service that a
/// browser's post goes to.
/// </summary>
internal sealed class BeginnersWork(OpenHouse house)
{
    public static readonly string[] Right =
    [
        "read-sheet", "open-isolator", "lock", "prove-dead", "mark-hole", "drill", "paint-edge", "seat-beacon", "run-cable", "join-plug", "close-isolator", "try-beacon",
    ];

    /// <summary>The hole is drilled before the supply is proved dead.</summary>
    public static readonly string[] DrillsLive =
    [
        "read-sheet", "open-isolator", "lock", "mark-hole", "drill", "prove-dead", "paint-edge", "seat-beacon", "run-cable", "join-plug", "close-isolator", "try-beacon",
    ];

    /// <summary>The isolator is closed before the plug is joined.</summary>
    public static readonly string[] PlugsLive =
    [
        "read-sheet", "open-isolator", "lock", "prove-dead", "mark-hole", "drill", "paint-edge", "seat-beacon", "run-cable", "close-isolator", "join-plug", "try-beacon",
    ];

    /// <summary>Somebody draws the question and hands this order in.</summary>
    public async Task Practises(string userName, IEnumerable<string> order)
    {
        await using var scope = house.Services.CreateAsyncScope();
        var practice = scope.ServiceProvider.GetRequiredService<Practice>();
        var actor = await ActorOf(scope, userName);
        var asked = Done(await practice.Draw(actor, new("beacon-before-noon")));
        var answer = new Answer([.. order.Select(step => new Entry(new(step)))]);
        Done(await practice.HandIn(actor, new(Guid.NewGuid(), asked.Ticket, AnswerJson.Write(answer))));
    }

    /// <summary>One more technician than the demo has.</summary>
    /// <returns>The name for signing in.</returns>
    public async Task<string> Newcomer(string name, string userName)
    {
        await using var scope = house.Services.CreateAsyncScope();
        var owner = await ActorOf(scope, "hollis");
        Done(await scope.ServiceProvider.GetRequiredService<Training.Records.Accounts.People>().Add(owner, new(name, userName, owner.Shop, [Roles.Technician])));
        return userName;
    }

    private static async Task<Actor> ActorOf(AsyncServiceScope scope, string userName)
    {
        var person = await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().FindByNameAsync(userName);
        return (await scope.ServiceProvider.GetRequiredService<Training.Records.Accounts.People>().ActorOf(person!.Id))!;
    }

    private static T Done<T>(Outcome<T, Refusal> outcome) =>
        outcome.Match(value => value, refusal => throw new InvalidOperationException(refusal.Sentence));
}

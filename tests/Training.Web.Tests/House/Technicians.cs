using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Training.Content.Competencies;
using Training.Content.Procedures;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Records.Publishing;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;

namespace Training.Web.Tests.House;

/// <summary>People that a test needs for itself, so that no test stands in the way of another.</summary>
internal static class Technicians
{
    /// <summary>The password of <see cref="NewTechnician"/>.</summary>
    public const string Password = "a password of their own";

    private static int count;

    /// <summary>A new technician of Quillmoor Coachworks, signed in with a password of their own.</summary>
    public static Task<(Visitor Visitor, PersonId Person)> NewTechnician(this TrainingHouse house) => house.Newcomer("hollis", Roles.Technician);

    /// <summary>A new owner of Quillmoor Coachworks, signed in with a password of their own.</summary>
    public static Task<(Visitor Visitor, PersonId Person)> NewOwner(this TrainingHouse house) => house.Newcomer("ifeoma", Roles.Owner);

    private static async Task<(Visitor Visitor, PersonId Person)> Newcomer(this TrainingHouse house, string addedBy, string role)
    {
        var name = $"new-{Interlocked.Increment(ref count)}";
        var added = await house.With(async services =>
        {
            var people = services.GetRequiredService<People>();
            var shop = (await ActorOf(services, "hollis")).Shop;
            return (await people.Add(await ActorOf(services, addedBy), new($"New {name}", name, shop, [role]))).Value;
        });
        var visitor = house.Stranger();
        var page = await visitor.Get("/sign-in");
        await visitor.Post("/sign-in", page.TokenIn(), ("UserName", name), ("Password", added.OneTimePassword));
        page = await visitor.Get("/password");
        var chosen = await visitor.Post("/password", page.TokenIn(),
            ("Current", added.OneTimePassword), ("Chosen", Password), ("Again", Password));
        Assert.Equal(HttpStatusCode.Redirect, chosen.StatusCode);
        return (visitor, added.Person);
    }

    /// <summary>Opens a sitting and admits somebody to it.</summary>
    public static Task<(PaperId Paper, SittingId Sitting)> Admit(this TrainingHouse house, PersonId person) => house.With(async services =>
    {
        var renske = await ActorOf(services, "renske");
        var sittings = services.GetRequiredService<Sittings>();
        var competency = new CompetencyId("electrical-isolation");
        var sitting = (await sittings.Open(renske, competency, "Room 1")).Value;
        return ((await sittings.Admit(renske, sitting, person)).Value, sitting);
    });

    /// <summary>Closes a sitting.</summary>
    public static Task Close(this TrainingHouse house, SittingId sitting) => house.With(async services =>
        (await services.GetRequiredService<Sittings>().Close(await ActorOf(services, "renske"), sitting)).Value);

    /// <summary>A right order for a procedure, as the engine mends an empty one.</summary>
    public static IReadOnlyList<Entry> RightOrder(Procedure procedure, VariantId? variant) =>
        Grader.For(procedure, variant).Value.Grade(new Answer([])).Value.Nearest;

    /// <summary>A procedure that is served.</summary>
    public static Task<WrittenProcedure> Procedure(this TrainingHouse house, string id) => house.With(services =>
        Task.FromResult(services.GetRequiredService<Library>().Current.Content.FindProcedure(new(id))!));

    /// <summary>Everything that a procedure would give away: why its rules hold, what is never right.</summary>
    public static IEnumerable<string> SecretsOf(Procedure procedure) =>
        procedure.Rules.SelectMany(rule => new[] { rule.Because, rule.Otherwise })
            .Concat(procedure.Decoys.SelectMany(decoy => new[] { decoy.Because, decoy.Otherwise })).OfType<string>();

    public static async Task<T> With<T>(this TrainingHouse house, Func<IServiceProvider, Task<T>> act)
    {
        await using var scope = house.Services.CreateAsyncScope();
        return await act(scope.ServiceProvider);
    }

    private static async Task<Actor> ActorOf(IServiceProvider services, string userName)
    {
        var users = services.GetRequiredService<Microsoft.AspNetCore.Identity.UserManager<Person>>();
        return (await services.GetRequiredService<People>().ActorOf((await users.FindByNameAsync(userName))!.Id))!;
    }
}

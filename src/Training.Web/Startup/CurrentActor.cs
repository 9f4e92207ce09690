using System.Security.Claims;
using Training.Records;
using Training.Records.Accounts;

namespace Training.Web.Startup;

/// <summary>Who asks, for the services: the signed-in person with the shop and the roles that they have now.</summary>
/// <param name="accessor">The request.</param>
/// <param name="people">Looks the person up.</param>
public sealed class CurrentActor(IHttpContextAccessor accessor, People people)
{
    private Actor? actor;

    /// <summary>Whether somebody is signed in whom the records still know.</summary>
    public async Task<Actor?> Find()
    {
        if (actor is not null) return actor;
        var id = accessor.HttpContext?.User.FindFirstValue(ClaimTypes.NameIdentifier);
        return Guid.TryParse(id, out var person) ? actor = await people.ActorOf(new PersonId(person)) : null;
    }

    /// <summary>The signed-in person.</summary>
    /// <exception cref="InvalidOperationException">Nobody is signed in: the route lets in whom it must not.</exception>
    public async Task<Actor> Get() =>
        await Find() ?? throw new InvalidOperationException("The route asks for the actor, but nobody is signed in.");
}

using NodaTime;
using Training.Sequencing;

namespace Training.Records.Accounts;

/// <summary>Shops and the people in them.</summary>
public sealed class People
{
    /// <summary>Who a signed-in person is to the services; null where there is no such person (any more).</summary>
    /// <param name="person">The person.</param>
    public Task<Actor?> ActorOf(PersonId person) => throw new NotImplementedException();

    /// <summary>Whether nobody is administrator yet, so that <see cref="AddFirstAdministrator"/> is open.</summary>
    public Task<bool> AwaitsFirstAdministrator() => throw new NotImplementedException();

    /// <summary>Adds the first administrator, with a password that they chose; refused once there is one.</summary>
    /// <param name="displayName">The name that is shown.</param>
    /// <param name="userName">The name for signing in.</param>
    /// <param name="password">The password.</param>
    public Task<Outcome<PersonId, Refusal>> AddFirstAdministrator(string displayName, string userName, string password) =>
        throw new NotImplementedException();

    /// <summary>Adds a shop (administrators).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="timeZone">The IANA name of its time zone.</param>
    public Task<Outcome<ShopId, Refusal>> AddShop(Actor actor, string name, string timeZone) => throw new NotImplementedException();

    /// <summary>The shops that the actor sees: all for staff of the provider, their own for everybody else. By name.</summary>
    /// <param name="actor">Who asks.</param>
    public Task<IReadOnlyList<ShopView>> Shops(Actor actor) => throw new NotImplementedException();

    /// <summary>
    /// Adds a person with a one-time password. Owners add technicians of their own shop; administrators add anybody.
    /// Technicians and owners belong to a shop, trainers and administrators to the provider, examiners to either.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Who is added.</param>
    public Task<Outcome<AddedPerson, Refusal>> Add(Actor actor, NewPerson person) => throw new NotImplementedException();

    /// <summary>The people that the actor answers for, by shop and name: examiners, trainers, owners, administrators within their reach.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="shop">One shop alone; null for all within reach.</param>
    public Task<Outcome<IReadOnlyList<PersonView>, Refusal>> List(Actor actor, ShopId? shop = null) =>
        throw new NotImplementedException();

    /// <summary>One person: oneself, or one within reach for the roles that <see cref="List"/> serves.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">The person.</param>
    public Task<Outcome<PersonView, Refusal>> Look(Actor actor, PersonId person) => throw new NotImplementedException();

    /// <summary>Gives somebody a new one-time password (owners: their own technicians; administrators: anybody).</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="person">Who forgot theirs.</param>
    public Task<Outcome<AddedPerson, Refusal>> GiveOneTimePassword(Actor actor, PersonId person) =>
        throw new NotImplementedException();

    /// <summary>Replaces one's own password.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="current">The password until now.</param>
    /// <param name="chosen">The new one.</param>
    /// <returns>The person, or the sentence of what the new password lacks.</returns>
    public Task<Outcome<PersonId, Refusal>> ChoosePassword(Actor actor, string current, string chosen) =>
        throw new NotImplementedException();

    /// <summary>Chooses the language that one would rather read.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="language">The language, such as <c>es</c>.</param>
    public Task<Outcome<PersonId, Refusal>> ChooseLanguage(Actor actor, string language) => throw new NotImplementedException();
}

/// <summary>Somebody to be added.</summary>
/// <param name="DisplayName">The name that is shown and printed.</param>
/// <param name="UserName">The name for signing in: letters, digits, hyphens, dots.</param>
/// <param name="Shop">The shop; null for staff of the provider.</param>
/// <param name="Roles">What they may do, at least one of <see cref="Accounts.Roles"/>.</param>
/// <param name="Language">The language that they would rather read.</param>
public sealed record NewPerson(string DisplayName, string UserName, ShopId? Shop, IReadOnlyList<string> Roles, string Language = "en");

/// <summary>Somebody's one-time password: shown once, to be handed over in person.</summary>
/// <param name="Person">The person.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="OneTimePassword">The password, to be replaced at the first sign-in.</param>
public sealed record AddedPerson(PersonId Person, string UserName, string OneTimePassword);

/// <summary>A shop.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="TimeZone">The IANA name of its time zone.</param>
public sealed record ShopView(ShopId Id, string Name, string TimeZone);

/// <summary>A person.</summary>
/// <param name="Id">Their id.</param>
/// <param name="DisplayName">The name that is shown.</param>
/// <param name="UserName">The name for signing in.</param>
/// <param name="Shop">The shop; null for staff of the provider.</param>
/// <param name="Roles">What they may do.</param>
/// <param name="Language">The language that they would rather read.</param>
/// <param name="AddedAt">When they were added.</param>
public sealed record PersonView(
    PersonId Id, string DisplayName, string UserName, ShopView? Shop, IReadOnlyList<string> Roles, string Language, Instant AddedAt);

namespace Training.Records.Accounts;

/// <summary>
/// Who asks. Every service takes one and refuses what that person may not do. A person of a shop sees and touches that
/// shop's people and things alone; staff of the provider have no shop and, with the right role, see all of them. What
/// belongs to another shop is not found, never forbidden, so that nobody learns that it exists.
/// </summary>
/// <param name="Person">The person.</param>
/// <param name="Shop">The shop that the person belongs to; null for staff of the provider.</param>
/// <param name="Roles">The person's roles, of <see cref="Accounts.Roles"/>.</param>
public sealed record Actor(PersonId Person, ShopId? Shop, IReadOnlySet<string> Roles)
{
    /// <summary>Whether the person has a role.</summary>
    /// <param name="role">One of <see cref="Accounts.Roles"/>.</param>
    public bool Is(string role) => Roles.Contains(role);

    /// <summary>Whether things of that shop are within the person's sight, as far as shops go.</summary>
    /// <param name="shop">The shop; null for things of the provider.</param>
    public bool Reaches(ShopId? shop) => Shop is null || Shop == shop;

    /// <summary>Whether the person has a role that looks after other people.</summary>
    internal bool AnswersForOthers =>
        Is(Accounts.Roles.Examiner) || Is(Accounts.Roles.Owner) || Is(Accounts.Roles.Trainer) || Is(Accounts.Roles.Administrator);
}

using System.ComponentModel;
using Training.Records.Accounts;

namespace Training.Web.Features.Shared;

/// <summary>What roles are called, and what each may do in half a sentence. The sentences are keys of <see cref="Words"/>.</summary>
public static class RoleNames
{
    /// <summary>What a role is called.</summary>
    /// <param name="role">One of <see cref="Roles"/>.</param>
    [return: Localizable(true)]
    public static string Called(string role) => role switch
    {
        Roles.Technician => "technician",
        Roles.Owner => "owner",
        Roles.Examiner => "examiner",
        Roles.Trainer => "trainer",
        Roles.Administrator => "administrator",
        _ => role,
    };

    /// <summary>What a role may do.</summary>
    /// <param name="role">One of <see cref="Roles"/>.</param>
    [return: Localizable(true)]
    public static string Does(string role) => role switch
    {
        Roles.Technician => "technician: learns, practises, sits papers, is observed",
        Roles.Owner => "owner: answers for a shop's people, makes proofs",
        Roles.Examiner => "examiner: opens sittings, observes and signs",
        Roles.Trainer => "trainer: writes lessons and procedures",
        Roles.Administrator => "administrator: keeps shops, people and roles",
        _ => role,
    };
}

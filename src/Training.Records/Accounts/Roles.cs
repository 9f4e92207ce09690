namespace Training.Records.Accounts;

/// <summary>What a person may do; somebody can have several.</summary>
public static class Roles
{
    /// <summary>Learns, practises, sits papers and is observed. Belongs to a shop.</summary>
    public const string Technician = "technician";

    /// <summary>Writes the content and sees where it contradicts itself. Staff of the provider.</summary>
    public const string Trainer = "trainer";

    /// <summary>Opens sittings, observes runs and signs. Staff of the provider (sees every shop) or of one shop (sees that one).</summary>
    public const string Examiner = "examiner";

    /// <summary>Answers for a shop's people: adds technicians, suspends records, makes proofs. Belongs to a shop.</summary>
    public const string Owner = "owner";

    /// <summary>Keeps shops, people and roles; withdraws records. Staff of the provider.</summary>
    public const string Administrator = "administrator";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Technician, Trainer, Examiner, Owner, Administrator];
}

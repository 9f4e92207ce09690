using NodaTime;
using Training.Records.Certifying;

namespace Training.Records.Proving;

/// <summary>A proof, as its owner sees it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Token">The secret of its link: 256 bits in base64url.</param>
/// <param name="ForWhom">The customer; null for anybody.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="MadeBy">The owner who made it.</param>
/// <param name="EndedAt">When it was ended; null while it shows.</param>
/// <param name="Records">The chosen records.</param>
public sealed record ProofLine(
    ProofId Id, string Token, string? ForWhom, Instant MadeAt, string MadeBy, Instant? EndedAt, IReadOnlyList<RecordLine> Records);

/// <summary>What the holder of a link sees: <see cref="Ended"/> or <see cref="Shown"/>.</summary>
public abstract record ShownProof
{
    private ShownProof()
    {
    }

    /// <summary>The proof was ended; nothing else is shown.</summary>
    /// <param name="At">When.</param>
    public sealed record Ended(Instant At) : ShownProof;

    /// <summary>The proof shows.</summary>
    /// <param name="Shop">The shop.</param>
    /// <param name="ForWhom">The customer; null for anybody.</param>
    /// <param name="MadeAt">When it was made.</param>
    /// <param name="On">The day that is shown.</param>
    /// <param name="AllHold">Whether every one of the records holds on that day.</param>
    /// <param name="Records">The records.</param>
    public sealed record Shown(
        string Shop, string? ForWhom, Instant MadeAt, LocalDate On, bool AllHold, IReadOnlyList<ShownRecord> Records) : ShownProof;
}

/// <summary>A record in a proof: a name, a competency, a state and days; nothing else leaves the shop.</summary>
/// <param name="Name">The person.</param>
/// <param name="CompetencyTitle">What they can do.</param>
/// <param name="Standing">How it stands on that day; null on a day before it was issued.</param>
public sealed record ShownRecord(string Name, string CompetencyTitle, RecordStanding? Standing)
{
    /// <summary>Whether the person may do the work on that day.</summary>
    public bool Holds => Standing is { Holds: true };
}

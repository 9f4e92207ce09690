using NodaTime;
using Training.Records.Certifying;
using Training.Records.Ledger;

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
    /// <param name="AllHold">Whether every one of the records holds on that day, and there is at least one.</param>
    /// <param name="Records">The records, without those whose person's name was removed.</param>
    public sealed record Shown(
        string Shop, string? ForWhom, Instant MadeAt, LocalDate On, bool AllHold, IReadOnlyList<ShownRecord> Records) : ShownProof
    {
        /// <summary>The job that it speaks of, and how the people stood on its days; null for none, and where the log does not fit.</summary>
        public ShownJob? Job { get; init; }

        /// <summary>The language of the owner who made it, such as <c>es</c>: what is printed is written in it.</summary>
        public string Language { get; init; } = Content.ContentLibrary.DefaultLanguage;

        /// <summary>What the last walk through the log found; where it does not fit, nothing holds.</summary>
        public LogFinding? Log { get; init; }

        /// <summary>When names were removed of people who were in the proof, one for each record. Those records are shown no more.</summary>
        public IReadOnlyList<Instant> NamesRemoved { get; init; } = [];

        /// <summary>Who signs what can be taken away; null while nothing can be signed.</summary>
        public ShownIssuer? Issuer { get; init; }
    }
}

/// <summary>A record in a proof: a name, a competency, a state and days; nothing else leaves the shop.</summary>
/// <param name="Name">The person.</param>
/// <param name="CompetencyTitle">What they can do.</param>
/// <param name="Standing">How it stands on that day; null on a day before it was issued.</param>
public sealed record ShownRecord(string Name, string CompetencyTitle, RecordStanding? Standing)
{
    /// <summary>Which record.</summary>
    public RecordId Record { get; init; }

    /// <summary>Why it is not to be believed, whatever its state; null where it is as it was issued.</summary>
    public RecordDoubt? Doubt { get; init; }

    /// <summary>Whether the person may do the work on that day.</summary>
    public bool Holds => Standing is { Holds: true } && Doubt is null;
}

/// <summary>Who signs, for a customer who wants to check it.</summary>
/// <param name="Name">The provider.</param>
/// <param name="Did">The provider's identifier on the web.</param>
/// <param name="DocumentAddress">Where the keys stand.</param>
/// <param name="Key">The name of the key that signs now.</param>
public sealed record ShownIssuer(string Name, string Did, string DocumentAddress, string Key);

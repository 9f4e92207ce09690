namespace Training.Proofs.Signing;

/// <summary>A public key, whose it is, and until when it may be relied on.</summary>
/// <param name="Id">Which key of whom.</param>
/// <param name="PublicKey">The key.</param>
/// <param name="Expires">
/// When the key ended (Controlled Identifiers 1.0, section 2.2): it is followed by another, and nothing that bears a later
/// date is to be relied on. What bears an earlier one is, where its place in the log is vouched for by a key of today.
/// </param>
/// <param name="Revoked">
/// When the key was given up because somebody else may hold it. Nothing it signed is to be relied on any more,
/// whatever date stands in it: a thief can write any date.
/// </param>
public sealed record IssuerKey(
    KeyId Id, Ed25519PublicKey PublicKey, DateTimeOffset? Expires = null, DateTimeOffset? Revoked = null)
{
    /// <summary>Whether the key may be relied on at the instant of checking.</summary>
    public KeyStanding StandingAt(DateTimeOffset now) =>
        Revoked <= now ? KeyStanding.Revoked
        : Expires <= now ? KeyStanding.Expired
        : KeyStanding.Good;
}

/// <summary>Whether a key may be relied on.</summary>
public enum KeyStanding
{
    /// <summary>It may.</summary>
    Good,

    /// <summary>Its time is over.</summary>
    Expired,

    /// <summary>Its owner gave it up: somebody else may hold it.</summary>
    Revoked,
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Proofs.Signing;

namespace Training.Records.Issuers;

/// <summary>The public half of a key that was ever signed with, under the identifier that the provider had then.</summary>
internal sealed class IssuerKeyRow
{
    /// <summary>The key's name, from which the key itself follows: <c>did:web:…#z6Mk…</c>.</summary>
    public required string Id { get; init; }

    public required Instant AddedAt { get; init; }

    public Instant? ExpiresAt { get; set; }

    public Instant? GivenUpAt { get; set; }

    public IssuerKey Key()
    {
        var id = KeyId.Parse(Id).Value;
        return new(
            id, Ed25519PublicKey.FromMultikey(Id[(id.Controller.Length + 1)..]).Value, ExpiresAt?.ToDateTimeOffset(),
            GivenUpAt?.ToDateTimeOffset());
    }
}

internal sealed class IssuerKeyTable : IEntityTypeConfiguration<IssuerKeyRow>
{
    public void Configure(EntityTypeBuilder<IssuerKeyRow> builder)
    {
        builder.ToTable("IssuerKeys");
        builder.HasKey(key => key.Id);
    }
}

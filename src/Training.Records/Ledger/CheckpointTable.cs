using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Training.Proofs.Log;

namespace Training.Records.Ledger;

/// <summary>A signed checkpoint as it is kept and given away.</summary>
internal sealed class CheckpointRow
{
    /// <summary>Counted from 1.</summary>
    public required long Number { get; init; }

    /// <summary>Canonical JSON in UTF-8.</summary>
    public required byte[] Text { get; init; }

    /// <summary>The checkpoint; null where the row was altered so that it is none.</summary>
    public SignedCheckpoint? Read() =>
        Training.Proofs.CanonicalJson.Jcs.ReadCanonical(Text).IsOk && SignedCheckpoint.Read(Text) is { IsOk: true } read ? read.Value : null;
}

internal sealed class CheckpointTable : IEntityTypeConfiguration<CheckpointRow>
{
    public void Configure(EntityTypeBuilder<CheckpointRow> builder)
    {
        builder.ToTable("LogCheckpoints");
        builder.HasKey(checkpoint => checkpoint.Number);
        builder.Property(checkpoint => checkpoint.Number).ValueGeneratedNever();
    }
}

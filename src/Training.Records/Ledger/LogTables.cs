using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Training.Proofs.Log;
using Training.Records.Accounts;
using Training.Records.Certifying;

namespace Training.Records.Ledger;

/// <summary>An entry of the log as it is kept: added, never changed.</summary>
internal sealed class LogRow
{
    /// <summary>Its place, from 0.</summary>
    public required long Index { get; init; }

    /// <summary>Canonical JSON (RFC 8785) in UTF-8.</summary>
    public required byte[] Text { get; init; }

    /// <summary>Its hash in the tree (RFC 9162, section 2.1.1).</summary>
    public required byte[] LeafHash { get; init; }

    public static LogRow Of(long index, LogEntry entry) =>
        new() { Index = index, Text = entry.Text.Utf8.ToArray(), LeafHash = entry.LeafHash.Bytes.ToArray() };
}

/// <summary>What stands beside an entry about a record: who did it and why. The entry holds a salted hash of both.</summary>
internal sealed class LogNote
{
    public required long EntryIndex { get; init; }

    public required RecordId RecordId { get; init; }

    public required PersonId ById { get; init; }

    public required string Reason { get; set; }

    /// <summary>The salt of the hash; gone once a name was taken out of the reason, which then fits no hash any more.</summary>
    public required byte[]? Salt { get; set; }
}

internal sealed class LogTables : IEntityTypeConfiguration<LogRow>, IEntityTypeConfiguration<LogNote>
{
    public void Configure(EntityTypeBuilder<LogRow> builder)
    {
        builder.ToTable("LogEntries");
        builder.HasKey(entry => entry.Index);
        builder.Property(entry => entry.Index).ValueGeneratedNever();
    }

    public void Configure(EntityTypeBuilder<LogNote> builder)
    {
        builder.ToTable("LogNotes");
        builder.HasKey(note => note.EntryIndex);
        builder.Property(note => note.EntryIndex).ValueGeneratedNever();
        builder.HasOne<LogRow>().WithOne().HasForeignKey<LogNote>(note => note.EntryIndex);
        builder.HasOne<CompetencyRecord>().WithMany().HasForeignKey(note => note.RecordId);
        builder.HasOne<Person>().WithMany().HasForeignKey(note => note.ById);
    }
}

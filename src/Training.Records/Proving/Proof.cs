using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Staffing;

namespace Training.Records.Proving;

/// <summary>Records that an owner chose to show to whoever has the link.</summary>
internal sealed class Proof
{
    public required ProofId Id { get; init; }

    /// <summary>The secret of the link.</summary>
    public required string Token { get; init; }

    public required ShopId ShopId { get; init; }

    public required PersonId MadeById { get; init; }

    public required Instant MadeAt { get; init; }

    public required string? ForWhom { get; init; }

    public Instant? EndedAt { get; set; }

    public List<ProofRecord> Records { get; init; } = [];
}

/// <summary>A record in a proof.</summary>
internal sealed class ProofRecord
{
    public ProofId ProofId { get; init; }

    public required RecordId RecordId { get; init; }
}

/// <summary>That a proof speaks of the days of a job.</summary>
internal sealed class JobProof
{
    public required ProofId ProofId { get; init; }

    public required JobId JobId { get; init; }
}

internal sealed class ProofTables : IEntityTypeConfiguration<Proof>, IEntityTypeConfiguration<ProofRecord>, IEntityTypeConfiguration<JobProof>
{
    public void Configure(EntityTypeBuilder<JobProof> builder)
    {
        builder.ToTable("JobProofs");
        builder.HasKey(proof => proof.ProofId);
        builder.HasOne<Proof>().WithOne().HasForeignKey<JobProof>(proof => proof.ProofId);
        builder.HasOne<Job>().WithMany().HasForeignKey(proof => proof.JobId);
    }

    public void Configure(EntityTypeBuilder<Proof> builder)
    {
        builder.HasKey(proof => proof.Id);
        builder.HasIndex(proof => proof.Token).IsUnique();
        builder.HasOne<Shop>().WithMany().HasForeignKey(proof => proof.ShopId);
        builder.HasOne<Person>().WithMany().HasForeignKey(proof => proof.MadeById);
    }

    public void Configure(EntityTypeBuilder<ProofRecord> builder)
    {
        builder.ToTable("ProofRecords");
        builder.HasKey(record => new { record.ProofId, record.RecordId });
        builder.HasOne<Proof>().WithMany(proof => proof.Records).HasForeignKey(record => record.ProofId);
        builder.HasOne<CompetencyRecord>().WithMany().HasForeignKey(record => record.RecordId);
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Records.Observing;

namespace Training.Records.Certifying;

/// <summary>
/// Whose a competency record is, and what joins it to the rest of the database. What it says, since when, and what
/// happened to it stands in the log and nowhere else.
/// </summary>
internal sealed class CompetencyRecord
{
    public required RecordId Id { get; init; }

    public required PersonId PersonId { get; init; }

    public required ShopId ShopId { get; init; }

    public required CompetencyId Competency { get; init; }

    public required PaperId PaperId { get; init; }

    /// <summary>The salt of the name and the shop in the log; gone once the name is removed.</summary>
    public required byte[]? Salt { get; set; }

    /// <summary>Its place in the status lists of its credentials, drawn at random so that it tells nothing.</summary>
    public required int StatusPlace { get; init; }

    public List<RecordRun> Runs { get; init; } = [];
}

/// <summary>A run that a record rests on.</summary>
internal sealed class RecordRun
{
    public RecordId RecordId { get; init; }

    public required RunId RunId { get; init; }
}

internal sealed class CompetencyRecordTables : IEntityTypeConfiguration<CompetencyRecord>, IEntityTypeConfiguration<RecordRun>
{
    public void Configure(EntityTypeBuilder<CompetencyRecord> builder)
    {
        builder.HasKey(record => record.Id);
        // A paper is worth one record.
        builder.HasIndex(record => record.PaperId).IsUnique();
        builder.HasIndex(record => record.StatusPlace).IsUnique();
        builder.HasIndex(record => new { record.PersonId, record.Competency });
        builder.HasOne<Person>().WithMany().HasForeignKey(record => record.PersonId);
        builder.HasOne<Shop>().WithMany().HasForeignKey(record => record.ShopId);
        builder.HasOne<Paper>().WithMany().HasForeignKey(record => record.PaperId);
    }

    public void Configure(EntityTypeBuilder<RecordRun> builder)
    {
        builder.ToTable("RecordRuns");
        builder.HasKey(run => new { run.RecordId, run.RunId });
        builder.HasIndex(run => run.RunId).IsUnique();
        builder.HasOne<CompetencyRecord>().WithMany(record => record.Runs).HasForeignKey(run => run.RecordId);
        builder.HasOne<Run>().WithMany().HasForeignKey(run => run.RunId);
    }
}

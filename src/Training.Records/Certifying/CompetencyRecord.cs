using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Records.Observing;
using Training.Records.Publishing;

namespace Training.Records.Certifying;

/// <summary>That a person has shown a competency, and by what. Its state is not kept: it follows from this, its events and the day.</summary>
internal sealed class CompetencyRecord
{
    public required RecordId Id { get; init; }

    public required PersonId PersonId { get; init; }

    public required ShopId ShopId { get; init; }

    public required CompetencyId Competency { get; init; }

    public required ContentHash CompetencyHash { get; init; }

    public required PaperId PaperId { get; init; }

    public required Instant IssuedAt { get; init; }

    public List<RecordRun> Runs { get; init; } = [];

    public List<RecordText> Texts { get; init; } = [];

    public List<RecordEvent> Events { get; init; } = [];
}

/// <summary>A run that a record rests on.</summary>
internal sealed class RecordRun
{
    public RecordId RecordId { get; init; }

    public required RunId RunId { get; init; }
}

/// <summary>A text that a record was judged by.</summary>
internal sealed class RecordText
{
    public RecordId RecordId { get; init; }

    public required string Path { get; init; }

    public required ContentHash Hash { get; init; }
}

/// <summary>Something that happened to a record; added, never changed.</summary>
internal sealed class RecordEvent
{
    public RecordId RecordId { get; init; }

    /// <summary>Counted from 1 within the record.</summary>
    public required int Number { get; init; }

    public required RecordEventKind Kind { get; init; }

    public required Instant At { get; init; }

    public required PersonId ById { get; init; }

    public required string Reason { get; init; }
}

internal sealed class CompetencyRecordTables : IEntityTypeConfiguration<CompetencyRecord>, IEntityTypeConfiguration<RecordRun>,
    IEntityTypeConfiguration<RecordText>, IEntityTypeConfiguration<RecordEvent>
{
    public void Configure(EntityTypeBuilder<CompetencyRecord> builder)
    {
        builder.HasKey(record => record.Id);
        // A paper is worth one record.
        builder.HasIndex(record => record.PaperId).IsUnique();
        builder.HasIndex(record => new { record.PersonId, record.Competency });
        builder.HasOne<Person>().WithMany().HasForeignKey(record => record.PersonId);
        builder.HasOne<Shop>().WithMany().HasForeignKey(record => record.ShopId);
        builder.HasOne<Paper>().WithMany().HasForeignKey(record => record.PaperId);
        builder.HasOne<PublishedText>().WithMany().HasForeignKey(record => record.CompetencyHash);
    }

    public void Configure(EntityTypeBuilder<RecordRun> builder)
    {
        builder.ToTable("RecordRuns");
        builder.HasKey(run => new { run.RecordId, run.RunId });
        builder.HasIndex(run => run.RunId).IsUnique();
        builder.HasOne<CompetencyRecord>().WithMany(record => record.Runs).HasForeignKey(run => run.RecordId);
        builder.HasOne<Run>().WithMany().HasForeignKey(run => run.RunId);
    }

    public void Configure(EntityTypeBuilder<RecordText> builder)
    {
        builder.ToTable("RecordTexts");
        // A renewed text may stand beside an older one: two runs, two revisions.
        builder.HasKey(text => new { text.RecordId, text.Path, text.Hash });
        builder.HasOne<CompetencyRecord>().WithMany(record => record.Texts).HasForeignKey(text => text.RecordId);
        builder.HasOne<PublishedText>().WithMany().HasForeignKey(text => text.Hash);
    }

    public void Configure(EntityTypeBuilder<RecordEvent> builder)
    {
        builder.ToTable("RecordEvents");
        builder.HasKey(entry => new { entry.RecordId, entry.Number });
        builder.HasOne<CompetencyRecord>().WithMany(record => record.Events).HasForeignKey(entry => entry.RecordId);
        builder.HasOne<Person>().WithMany().HasForeignKey(entry => entry.ById);
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Examining;
using Training.Records.Publishing;
using Training.Sequencing.Procedures;

namespace Training.Records.Observing;

/// <summary>Real work at a vehicle, watched by an examiner.</summary>
internal sealed class Run
{
    public required RunId Id { get; init; }

    public required PersonId TechnicianId { get; init; }

    /// <summary>The technician's shop when it was started.</summary>
    public required ShopId ShopId { get; init; }

    public required PersonId ExaminerId { get; init; }

    /// <summary>The passed paper that it follows.</summary>
    public required PaperId PaperId { get; init; }

    public required CompetencyId Competency { get; init; }

    public required ProcedureId Procedure { get; init; }

    public required ContentHash ProcedureHash { get; init; }

    public required int PublicationNumber { get; init; }

    public required VariantId? Variant { get; init; }

    public required string Chassis { get; init; }

    public required Instant StartedAt { get; init; }

    public Instant? EndedAt { get; set; }

    public Instant? SignedAt { get; set; }

    public string? Note { get; set; }

    public Instant? AbandonedAt { get; set; }

    public string? Reason { get; set; }

    public string? VerdictJson { get; set; }

    public bool? Accepted { get; set; }

    /// <summary>The language that the technician reads; null where it was not noted yet.</summary>
    public string? Language { get; init; }

    public List<Tap> Taps { get; init; } = [];

    public RunState State => this switch
    {
        { AbandonedAt: not null } => RunState.Abandoned,
        { SignedAt: not null } => RunState.Signed,
        { EndedAt: not null } => RunState.Ended,
        _ => RunState.UnderWay,
    };

    /// <summary>The taps that stand, in order.</summary>
    public IEnumerable<Tap> LiveTaps => Taps.Where(tap => tap.UndoneAt is null).OrderBy(tap => tap.Number);
}

/// <summary>That something was done, and when, in seconds since the start of the run.</summary>
internal interface ITap
{
    int Number { get; }

    StepId Step { get; }

    decimal Seconds { get; }
}

/// <summary>That something was done, at a time since the start of the run. Taking it back marks it; nothing is deleted.</summary>
internal sealed class Tap : ITap
{
    public RunId RunId { get; init; }

    public required int Number { get; init; }

    /// <summary>The GUID that the device made for it.</summary>
    public required Guid Id { get; init; }

    public required StepId Step { get; init; }

    public required decimal Seconds { get; init; }

    public required Instant ReceivedAt { get; init; }

    public Instant? UndoneAt { get; set; }
}

internal sealed class RunTables : IEntityTypeConfiguration<Run>, IEntityTypeConfiguration<Tap>
{
    public void Configure(EntityTypeBuilder<Run> builder)
    {
        builder.HasKey(run => run.Id);
        // Nobody works at two vehicles at once.
        builder.HasIndex(run => run.TechnicianId).IsUnique().HasFilter("\"EndedAt\" IS NULL AND \"AbandonedAt\" IS NULL");
        builder.HasIndex(run => run.PaperId);
        builder.HasOne<Person>().WithMany().HasForeignKey(run => run.TechnicianId);
        builder.HasOne<Person>().WithMany().HasForeignKey(run => run.ExaminerId);
        builder.HasOne<Shop>().WithMany().HasForeignKey(run => run.ShopId);
        builder.HasOne<Paper>().WithMany().HasForeignKey(run => run.PaperId);
        builder.HasOne<Publication>().WithMany().HasForeignKey(run => run.PublicationNumber);
        builder.ToTable(table => table.HasCheckConstraint("NobodyExaminesThemselves", "\"TechnicianId\" <> \"ExaminerId\""));
        builder.Property(run => run.Language).HasMaxLength(16);
        builder.Ignore(run => run.State);
        builder.Ignore(run => run.LiveTaps);
    }

    public void Configure(EntityTypeBuilder<Tap> builder)
    {
        builder.ToTable("Taps");
        builder.HasKey(tap => new { tap.RunId, tap.Number });
        builder.HasIndex(tap => new { tap.RunId, tap.Id }).IsUnique();
        builder.HasOne<Run>().WithMany(run => run.Taps).HasForeignKey(tap => tap.RunId);
    }
}

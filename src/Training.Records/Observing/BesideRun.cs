using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Records.Accounts;
using Training.Sequencing.Procedures;

namespace Training.Records.Observing;

/// <summary>
/// What a second examiner taps who observes a run beside its own examiner, unseen by the first. It shows how far two people
/// who watch the same work agree, and never changes the run, its verdict or a record.
/// </summary>
internal sealed class BesideRun
{
    public required RunId RunId { get; init; }

    public required PersonId ExaminerId { get; init; }

    public required Instant BegunAt { get; init; }

    public Instant? EndedAt { get; set; }

    public List<BesideTap> Taps { get; init; } = [];

    /// <summary>The taps that stand, in order.</summary>
    public IEnumerable<BesideTap> LiveTaps => Taps.Where(tap => tap.UndoneAt is null).OrderBy(tap => tap.Number);
}

/// <summary>A tap of the second examiner, on the clock of the run.</summary>
internal sealed class BesideTap : ITap
{
    public RunId RunId { get; init; }

    public PersonId ExaminerId { get; init; }

    public required int Number { get; init; }

    /// <summary>The GUID that the device made for it.</summary>
    public required Guid Id { get; init; }

    public required StepId Step { get; init; }

    public required decimal Seconds { get; init; }

    public Instant? UndoneAt { get; set; }
}

internal sealed class BesideRunTables : IEntityTypeConfiguration<BesideRun>, IEntityTypeConfiguration<BesideTap>
{
    public void Configure(EntityTypeBuilder<BesideRun> builder)
    {
        builder.ToTable("BesideRuns");
        builder.HasKey(beside => new { beside.RunId, beside.ExaminerId });
        builder.HasOne<Run>().WithMany().HasForeignKey(beside => beside.RunId);
        builder.HasOne<Person>().WithMany().HasForeignKey(beside => beside.ExaminerId);
        builder.Ignore(beside => beside.LiveTaps);
    }

    public void Configure(EntityTypeBuilder<BesideTap> builder)
    {
        builder.ToTable("BesideTaps");
        builder.HasKey(tap => new { tap.RunId, tap.ExaminerId, tap.Number });
        builder.HasIndex(tap => new { tap.RunId, tap.ExaminerId, tap.Id }).IsUnique();
        builder.HasOne<BesideRun>().WithMany(beside => beside.Taps).HasForeignKey(tap => new { tap.RunId, tap.ExaminerId });
    }
}

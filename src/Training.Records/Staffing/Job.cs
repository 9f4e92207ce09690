using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Sequencing.Procedures;

namespace Training.Records.Staffing;

/// <summary>Work on one chassis for a customer, and what the people who do it must be able to do.</summary>
internal sealed class Job
{
    public required JobId Id { get; init; }

    public required ShopId ShopId { get; init; }

    public required string Customer { get; init; }

    public required string Chassis { get; init; }

    public required VariantId Kind { get; init; }

    public required LocalDate FirstDay { get; init; }

    public required LocalDate LastDay { get; init; }

    public required string Work { get; init; }

    /// <summary>Whether each place wants a person of its own.</summary>
    public required bool SeparatePeople { get; init; }

    public required PersonId MadeById { get; init; }

    public required Instant MadeAt { get; init; }

    /// <summary>That it was called off; null while it goes on.</summary>
    public JobCancellation? Cancellation { get; init; }

    public List<JobNeed> Needs { get; init; } = [];

    public List<Crew> Crews { get; init; } = [];
}

/// <summary>How many people with a competency a job needs.</summary>
internal sealed class JobNeed
{
    public JobId JobId { get; init; }

    public required CompetencyId Competency { get; init; }

    public required int People { get; init; }
}

/// <summary>A crew as its owner confirmed it. Another is added when it changes; none is changed or deleted.</summary>
internal sealed class Crew
{
    public JobId JobId { get; init; }

    /// <summary>Counted from 1 within the job; the last counts.</summary>
    public required int Number { get; init; }

    public required PersonId ConfirmedById { get; init; }

    public required Instant ConfirmedAt { get; init; }

    public List<CrewPlace> Places { get; init; } = [];
}

/// <summary>A person in a crew for one competency.</summary>
internal sealed class CrewPlace
{
    public JobId JobId { get; init; }

    public int Number { get; init; }

    public required CompetencyId Competency { get; init; }

    public required PersonId PersonId { get; init; }
}

/// <summary>A job was called off. The job itself stays as it is.</summary>
internal sealed class JobCancellation
{
    public required JobId JobId { get; init; }

    public required PersonId ById { get; init; }

    public required Instant At { get; init; }
}

internal sealed class JobTables : IEntityTypeConfiguration<Job>, IEntityTypeConfiguration<JobNeed>,
    IEntityTypeConfiguration<Crew>, IEntityTypeConfiguration<CrewPlace>, IEntityTypeConfiguration<JobCancellation>
{
    public void Configure(EntityTypeBuilder<Job> builder)
    {
        builder.ToTable("Jobs");
        builder.HasKey(job => job.Id);
        builder.HasIndex(job => new { job.ShopId, job.LastDay });
        builder.HasOne<Shop>().WithMany().HasForeignKey(job => job.ShopId);
        builder.HasOne<Person>().WithMany().HasForeignKey(job => job.MadeById);
    }

    public void Configure(EntityTypeBuilder<JobNeed> builder)
    {
        builder.ToTable("JobNeeds");
        builder.HasKey(need => new { need.JobId, need.Competency });
        builder.HasOne<Job>().WithMany(job => job.Needs).HasForeignKey(need => need.JobId);
    }

    public void Configure(EntityTypeBuilder<Crew> builder)
    {
        builder.ToTable("Crews");
        builder.HasKey(crew => new { crew.JobId, crew.Number });
        builder.HasOne<Job>().WithMany(job => job.Crews).HasForeignKey(crew => crew.JobId);
        builder.HasOne<Person>().WithMany().HasForeignKey(crew => crew.ConfirmedById);
    }

    public void Configure(EntityTypeBuilder<CrewPlace> builder)
    {
        builder.ToTable("CrewPlaces");
        builder.HasKey(place => new { place.JobId, place.Number, place.Competency, place.PersonId });
        builder.HasOne<Crew>().WithMany(crew => crew.Places).HasForeignKey(place => new { place.JobId, place.Number });
        builder.HasOne<Person>().WithMany().HasForeignKey(place => place.PersonId);
    }

    public void Configure(EntityTypeBuilder<JobCancellation> builder)
    {
        builder.ToTable("JobCancellations");
        builder.HasKey(cancellation => cancellation.JobId);
        builder.HasOne<Job>().WithOne(job => job.Cancellation).HasForeignKey<JobCancellation>(cancellation => cancellation.JobId);
        builder.HasOne<Person>().WithMany().HasForeignKey(cancellation => cancellation.ById);
    }
}

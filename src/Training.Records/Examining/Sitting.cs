using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Records.Accounts;
using Training.Records.Publishing;

namespace Training.Records.Examining;

/// <summary>One occasion of an examination.</summary>
internal sealed class Sitting
{
    public required SittingId Id { get; init; }

    public required CompetencyId Competency { get; init; }

    public required ContentHash CompetencyHash { get; init; }

    /// <summary>The publication that everybody in it is asked from.</summary>
    public required int PublicationNumber { get; init; }

    public required PersonId ExaminerId { get; init; }

    /// <summary>The examiner's shop; null for staff of the provider.</summary>
    public required ShopId? ShopId { get; init; }

    public required string Place { get; init; }

    public required Instant OpenedAt { get; init; }

    public Instant? ClosedAt { get; set; }
}

internal sealed class SittingTable : IEntityTypeConfiguration<Sitting>
{
    public void Configure(EntityTypeBuilder<Sitting> builder)
    {
        builder.HasKey(sitting => sitting.Id);
        builder.HasOne<Person>().WithMany().HasForeignKey(sitting => sitting.ExaminerId);
        builder.HasOne<Shop>().WithMany().HasForeignKey(sitting => sitting.ShopId);
        builder.HasOne<Publication>().WithMany().HasForeignKey(sitting => sitting.PublicationNumber);
    }
}

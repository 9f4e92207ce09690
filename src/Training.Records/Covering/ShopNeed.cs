using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content.Competencies;
using Training.Records.Accounts;

namespace Training.Records.Covering;

/// <summary>How many people a shop needs for a competency, as its owner said.</summary>
internal sealed class ShopNeed
{
    public required ShopId ShopId { get; init; }

    public required CompetencyId Competency { get; init; }

    public required int People { get; set; }

    public required PersonId SetById { get; set; }

    public required Instant SetAt { get; set; }
}

internal sealed class ShopNeedTables : IEntityTypeConfiguration<ShopNeed>
{
    public void Configure(EntityTypeBuilder<ShopNeed> builder)
    {
        builder.ToTable("ShopNeeds");
        builder.HasKey(need => new { need.ShopId, need.Competency });
        builder.HasOne<Shop>().WithMany().HasForeignKey(need => need.ShopId);
        builder.HasOne<Person>().WithMany().HasForeignKey(need => need.SetById);
    }
}

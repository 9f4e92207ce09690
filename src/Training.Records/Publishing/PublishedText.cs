using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;

namespace Training.Records.Publishing;

/// <summary>A text that was published once: kept for good by its hash, never changed.</summary>
internal sealed class PublishedText
{
    public required ContentHash Hash { get; init; }

    public required string Text { get; init; }

    public required Instant FirstPublishedAt { get; init; }
}

/// <summary>A state of the whole content folder that was served from some time on.</summary>
internal sealed class Publication
{
    public required int Number { get; init; }

    public required Instant At { get; init; }

    public List<PublishedFile> Files { get; init; } = [];
}

/// <summary>Which text stood where in a publication.</summary>
internal sealed class PublishedFile
{
    public int PublicationNumber { get; init; }

    public required string Path { get; init; }

    public required ContentHash Hash { get; init; }
}

internal sealed class PublishingTables : IEntityTypeConfiguration<PublishedText>, IEntityTypeConfiguration<Publication>,
    IEntityTypeConfiguration<PublishedFile>
{
    public void Configure(EntityTypeBuilder<PublishedText> builder) => builder.HasKey(text => text.Hash);

    public void Configure(EntityTypeBuilder<Publication> builder)
    {
        builder.HasKey(publication => publication.Number);
        builder.Property(publication => publication.Number).ValueGeneratedNever();
    }

    public void Configure(EntityTypeBuilder<PublishedFile> builder)
    {
        builder.ToTable("PublishedFiles");
        builder.HasKey(file => new { file.PublicationNumber, file.Path });
        builder.HasOne<PublishedText>().WithMany().HasForeignKey(file => file.Hash);
        builder.HasOne<Publication>().WithMany(publication => publication.Files).HasForeignKey(file => file.PublicationNumber);
    }
}

using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Records.Accounts;

namespace Training.Records.Writing;

/// <summary>A file of the content that trainers write on before it is published. Its texts stand in <see cref="DraftText"/>.</summary>
internal sealed class Draft
{
    public required DraftId Id { get; init; }

    /// <summary>Where the file stands, or is to stand, below <c>content/</c>.</summary>
    public required string Path { get; init; }

    /// <summary>What was served at that path when the draft began, or when somebody looked at the two since; null for nothing.</summary>
    public required ContentHash? BasedOn { get; set; }

    public required DraftState State { get; set; }

    /// <summary>The number of the text that counts.</summary>
    public required int Version { get; set; }

    public required PersonId ChangedById { get; set; }

    public required Instant ChangedAt { get; set; }

    /// <summary>Who asked for the newest text to be published; null while nobody does.</summary>
    public PersonId? OfferedById { get; set; }

    public Instant? OfferedAt { get; set; }
}

/// <summary>
/// A text that somebody had on the screen and sent. It is kept for good: as the draft's next version, or beside it where
/// the draft had moved on meanwhile.
/// </summary>
internal sealed class DraftText
{
    public required DraftId DraftId { get; init; }

    /// <summary>Counted from 1 within the draft, over both kinds.</summary>
    public required int Number { get; init; }

    /// <summary>The version that was on the screen when it was written; 0 for the first.</summary>
    public required int WrittenOn { get; init; }

    /// <summary>Whether it was written on an old version and became none itself.</summary>
    public required bool IsBeside { get; init; }

    /// <summary>Whether somebody has looked at a text that was kept beside and decided.</summary>
    public bool IsSettled { get; set; }

    public required PersonId ById { get; init; }

    public required Instant At { get; init; }

    public required string Text { get; init; }
}

internal sealed class DraftTables : IEntityTypeConfiguration<Draft>, IEntityTypeConfiguration<DraftText>
{
    public const int LongestPath = 200;

    public void Configure(EntityTypeBuilder<Draft> builder)
    {
        builder.ToTable("Drafts");
        builder.HasKey(draft => draft.Id);
        builder.Property(draft => draft.Path).HasMaxLength(LongestPath);
        builder.HasIndex(draft => new { draft.State, draft.Path });
        builder.HasOne<Person>().WithMany().HasForeignKey(draft => draft.ChangedById);
        builder.HasOne<Person>().WithMany().HasForeignKey(draft => draft.OfferedById);
    }

    public void Configure(EntityTypeBuilder<DraftText> builder)
    {
        builder.ToTable("DraftTexts");
        builder.HasKey(text => new { text.DraftId, text.Number });
        builder.HasOne<Draft>().WithMany().HasForeignKey(text => text.DraftId);
        builder.HasOne<Person>().WithMany().HasForeignKey(text => text.ById);
        // Every second of writing keeps a text; most of each is that of the one before.
        builder.Property(text => text.Text).HasConversion(text => Packed.Pack(text), bytes => Packed.Unpack(bytes)).HasMaxLength(ContentFile.LargestSize);
    }
}

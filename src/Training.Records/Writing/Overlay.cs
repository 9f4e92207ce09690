using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Publishing;

namespace Training.Records.Writing;

/// <summary>A text that was published from the desk and is served in place of the content folder's file of that path.</summary>
internal sealed class LaidOver
{
    public required string Path { get; init; }

    /// <summary>The text that is served.</summary>
    public required ContentHash Text { get; set; }

    /// <summary>The folder's file that it was laid over; null where the folder had none.</summary>
    public required ContentHash? Over { get; set; }
}

/// <summary>Something that was done at the desk and changed what is served; none is changed or deleted.</summary>
internal sealed class DeskEntry
{
    public required int Number { get; init; }

    public required Instant At { get; init; }

    public required DeskAct Act { get; init; }

    public required string Path { get; init; }

    /// <summary>What is served at the path since; null for nothing.</summary>
    public required ContentHash? Text { get; init; }

    /// <summary>The publication that came of it.</summary>
    public required int PublicationNumber { get; init; }

    public required PersonId WrittenById { get; init; }

    /// <summary>Who approved it; the writer where there was no other trainer.</summary>
    public required PersonId ApprovedById { get; init; }

    /// <summary>The entry of the public log that says so; null for what was done before the log took such in.</summary>
    public long? LogIndex { get; init; }

    /// <summary>The salt of the writer's name in that entry; gone once the name was removed.</summary>
    public byte[]? WriterSalt { get; set; }

    /// <summary>The salt of the approver's name; null where nobody else approved it, and gone once the name was removed.</summary>
    public byte[]? ApproverSalt { get; set; }
}

internal sealed class OverlayTables : IEntityTypeConfiguration<LaidOver>, IEntityTypeConfiguration<DeskEntry>
{
    public void Configure(EntityTypeBuilder<LaidOver> builder)
    {
        builder.ToTable("LaidOver");
        builder.HasKey(file => file.Path);
        builder.Property(file => file.Path).HasMaxLength(DraftTables.LongestPath);
        builder.HasOne<PublishedText>().WithMany().HasForeignKey(file => file.Text);
    }

    public void Configure(EntityTypeBuilder<DeskEntry> builder)
    {
        builder.ToTable("DeskEntries");
        builder.HasKey(entry => entry.Number);
        builder.Property(entry => entry.Number).ValueGeneratedNever();
        builder.Property(entry => entry.Path).HasMaxLength(DraftTables.LongestPath);
        builder.HasOne<Publication>().WithMany().HasForeignKey(entry => entry.PublicationNumber);
        builder.HasOne<Person>().WithMany().HasForeignKey(entry => entry.WrittenById);
        builder.HasOne<Person>().WithMany().HasForeignKey(entry => entry.ApprovedById);
    }
}

/// <summary>What is to be served where the desk and the folder both have something to say.</summary>
/// <param name="Files">The files: the folder's, with those that were published from the desk in place of theirs.</param>
/// <param name="Changes">Where the folder's file was changed after the desk's was laid over it.</param>
internal sealed record Overlay(IReadOnlyList<ContentFile> Files, IReadOnlyList<FolderChange> Changes)
{
    /// <summary>Lays the desk's files over the folder's. The desk's are served until a trainer decides otherwise.</summary>
    public static Overlay Of(IReadOnlyList<ContentFile> folder, IReadOnlyList<(LaidOver Row, string Text)> laid)
    {
        var files = folder.ToDictionary(file => file.Path, StringComparer.Ordinal);
        List<FolderChange> changes = [];
        foreach (var (row, text) in laid)
        {
            var theirs = files.GetValueOrDefault(row.Path);
            if (theirs?.Hash != row.Over && theirs?.Hash != row.Text) changes.Add(new(row.Path, theirs?.Text, text));
            files[row.Path] = new(row.Path, text);
        }

        return new([.. files.Values.OrderBy(file => file.Path, StringComparer.Ordinal)], changes);
    }
}

/// <summary>A file that was published from the desk and has been changed in the content folder since.</summary>
/// <param name="Path">Where it stands.</param>
/// <param name="Folder">What the folder says now; null where the file is gone from it.</param>
/// <param name="Desk">What was published from the desk, and is served.</param>
public sealed record FolderChange(string Path, string? Folder, string Desk);

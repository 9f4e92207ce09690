using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Content.Modules;
using Training.Records.Accounts;

namespace Training.Records.Learning;

/// <summary>That a person has read a text of a lesson.</summary>
internal sealed class LessonRead
{
    public required PersonId PersonId { get; init; }

    public required ModuleId Module { get; init; }

    public required ContentHash Lesson { get; init; }

    public required Instant ReadAt { get; init; }
}

internal sealed class LessonReadTable : IEntityTypeConfiguration<LessonRead>
{
    public void Configure(EntityTypeBuilder<LessonRead> builder)
    {
        builder.HasKey(read => new { read.PersonId, read.Module, read.Lesson });
        builder.HasOne<Person>().WithMany().HasForeignKey(read => read.PersonId);
    }
}

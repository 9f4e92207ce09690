using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Records.Publishing;

namespace Training.Records.Practising;

/// <summary>A practice answer that was handed in: enough to draw the question and grade the answer again.</summary>
internal sealed class PracticeTry
{
    public required PracticeId Id { get; init; }

    public required PersonId PersonId { get; init; }

    /// <summary>The GUID that the browser made for the try.</summary>
    public required Guid Key { get; init; }

    public required ScenarioId Scenario { get; init; }

    public required QuestionKind Kind { get; init; }

    public required int PublicationNumber { get; init; }

    public required long Seed { get; init; }

    public required ContentHash ScenarioHash { get; init; }

    /// <summary>What was judged by; null where no procedure was.</summary>
    public required ContentHash? ProcedureHash { get; init; }

    public required string AnswerJson { get; init; }

    public required bool Accepted { get; init; }

    public required bool Safe { get; init; }

    public required decimal Score { get; init; }

    public required Instant At { get; init; }

    /// <summary>The language in which it was answered; null where it was not noted yet.</summary>
    public string? Language { get; init; }
}

internal sealed class PracticeTryTable : IEntityTypeConfiguration<PracticeTry>
{
    public void Configure(EntityTypeBuilder<PracticeTry> builder)
    {
        builder.HasKey(attempt => attempt.Id);
        builder.HasIndex(attempt => new { attempt.PersonId, attempt.Key }).IsUnique();
        builder.Property(attempt => attempt.Language).HasMaxLength(16);
        builder.HasOne<Person>().WithMany().HasForeignKey(attempt => attempt.PersonId);
        builder.HasOne<Publication>().WithMany().HasForeignKey(attempt => attempt.PublicationNumber);
    }
}

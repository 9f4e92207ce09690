using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Accounts;
using Training.Sequencing.Procedures;

namespace Training.Records.Examining;

/// <summary>What one technician answers in one sitting.</summary>
internal sealed class Paper
{
    public required PaperId Id { get; init; }

    public required SittingId SittingId { get; init; }

    public required PersonId PersonId { get; init; }

    /// <summary>The technician's shop when they were admitted.</summary>
    public required ShopId ShopId { get; init; }

    public required CompetencyId Competency { get; init; }

    public required Instant AdmittedAt { get; init; }

    public Instant? BegunAt { get; set; }

    public Instant? EndsAt { get; set; }

    /// <summary>What the questions were drawn from; null before it was begun.</summary>
    public long? Seed { get; set; }

    public Instant? HandedInAt { get; set; }

    public PaperEnd? End { get; set; }

    public decimal? Score { get; set; }

    public bool? Safe { get; set; }

    public bool? Passed { get; set; }

    /// <summary>When the sitting was closed over it, where it had not been begun.</summary>
    public Instant? LapsedAt { get; set; }

    /// <summary>The language in which it was begun; null where it was not noted yet.</summary>
    public string? Language { get; set; }

    public List<PaperQuestion> Questions { get; init; } = [];

    public PaperState State => this switch
    {
        { LapsedAt: not null } => PaperState.Lapsed,
        { HandedInAt: not null } => PaperState.HandedIn,
        { BegunAt: not null } => PaperState.Open,
        _ => PaperState.Admitted,
    };

    /// <summary>Whether its time is over though nobody has closed it yet.</summary>
    public bool IsOverdue(Instant now) => State == PaperState.Open && now >= EndsAt;
}

/// <summary>
/// A question of a paper, the answer as it was saved last and, in the end, what was said of it. What is shown of the
/// question, and what is right, is drawn again from the paper's seed and stands nowhere.
/// </summary>
internal sealed class PaperQuestion
{
    public PaperId PaperId { get; init; }

    public required int Number { get; init; }

    public required QuestionKind Kind { get; init; }

    public required ScenarioId Scenario { get; init; }

    public required ContentHash ScenarioHash { get; init; }

    /// <summary>The procedure that is judged by; null where none is, as with a reading.</summary>
    public required ProcedureId? Procedure { get; init; }

    public required ContentHash? ProcedureHash { get; init; }

    public required VariantId? Variant { get; init; }

    public string? AnswerJson { get; set; }

    public long AnswerCounter { get; set; }

    public Instant? AnswerSavedAt { get; set; }

    public string? VerdictJson { get; set; }

    public decimal? Score { get; set; }

    public bool? Safe { get; set; }
}

internal sealed class PaperTables : IEntityTypeConfiguration<Paper>, IEntityTypeConfiguration<PaperQuestion>
{
    public void Configure(EntityTypeBuilder<Paper> builder)
    {
        builder.HasKey(paper => paper.Id);
        builder.HasIndex(paper => new { paper.SittingId, paper.PersonId }).IsUnique();
        // Nobody has two papers that are not closed.
        builder.HasIndex(paper => paper.PersonId).IsUnique().HasFilter("\"HandedInAt\" IS NULL AND \"LapsedAt\" IS NULL");
        builder.HasOne<Sitting>().WithMany().HasForeignKey(paper => paper.SittingId);
        builder.HasOne<Person>().WithMany().HasForeignKey(paper => paper.PersonId);
        builder.HasOne<Shop>().WithMany().HasForeignKey(paper => paper.ShopId);
        builder.Property(paper => paper.Language).HasMaxLength(16);
        builder.Ignore(paper => paper.State);
    }

    public void Configure(EntityTypeBuilder<PaperQuestion> builder)
    {
        builder.ToTable("PaperQuestions");
        builder.HasKey(question => new { question.PaperId, question.Number });
        builder.HasOne<Paper>().WithMany(paper => paper.Questions).HasForeignKey(question => question.PaperId);
    }
}

using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Records.Issuers;
using Training.Records.Learning;
using Training.Records.Ledger;
using Training.Records.Observing;
using Training.Records.Practising;
using Training.Records.Proving;
using Training.Records.Publishing;
using Training.Records.Results;

namespace Training.Records.Storage;

/// <summary>Everything that the records keep. Other code asks the services, which know who may see what.</summary>
public abstract class TrainingDbContext : IdentityDbContext<Person, Role, PersonId>
{
    private protected TrainingDbContext(DbContextOptions options) : base(options)
    {
    }

    internal DbSet<Shop> Shops => Set<Shop>();

    internal DbSet<PublishedText> PublishedTexts => Set<PublishedText>();

    internal DbSet<Publication> Publications => Set<Publication>();

    internal DbSet<LessonRead> LessonsRead => Set<LessonRead>();

    internal DbSet<PracticeTry> PracticeTries => Set<PracticeTry>();

    internal DbSet<Tally> Tallies => Set<Tally>();

    internal DbSet<TallySubject> TallySubjects => Set<TallySubject>();

    internal DbSet<FirstChances> FirstChances => Set<FirstChances>();

    internal DbSet<WrongOrder> WrongOrders => Set<WrongOrder>();

    internal DbSet<PaperSum> PaperSums => Set<PaperSum>();

    internal DbSet<ItemSum> ItemSums => Set<ItemSum>();

    internal DbSet<JudgedPair> JudgedPairs => Set<JudgedPair>();

    internal DbSet<BesideRun> BesideRuns => Set<BesideRun>();

    internal DbSet<Sitting> Sittings => Set<Sitting>();

    internal DbSet<Paper> Papers => Set<Paper>();

    internal DbSet<Run> Runs => Set<Run>();

    internal DbSet<CompetencyRecord> CompetencyRecords => Set<CompetencyRecord>();

    internal DbSet<LogRow> LogEntries => Set<LogRow>();

    internal DbSet<LogNote> LogNotes => Set<LogNote>();

    internal DbSet<CheckpointRow> LogCheckpoints => Set<CheckpointRow>();

    internal DbSet<IssuerKeyRow> IssuerKeys => Set<IssuerKeyRow>();

    internal DbSet<Proof> Proofs => Set<Proof>();

    /// <summary>
    /// Begins a change. SQLite gives the one right to write here already, not at the first write, so what is read from now on
    /// cannot change before the commit; what was read earlier is forgotten for the same reason.
    /// </summary>
    internal async Task<IDbContextTransaction> BeginChange()
    {
        ChangeTracker.Clear();
        return await Database.BeginTransactionAsync();
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        ArgumentNullException.ThrowIfNull(configurationBuilder);
        Conversions.Register(configurationBuilder);
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(TrainingDbContext).Assembly);
        // Nothing that somebody was told is kept goes away because something else does.
        foreach (var key in builder.Model.GetEntityTypes().SelectMany(type => type.GetForeignKeys()))
            if (!IsIdentity(key.DeclaringEntityType.ClrType)) key.DeleteBehavior = DeleteBehavior.Restrict;
    }

    private static bool IsIdentity(Type type) => type.Namespace == "Microsoft.AspNetCore.Identity";
}

using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Training.Records.Accounts;
using Training.Records.Asking;
using Training.Records.Certifying;
using Training.Records.Covering;
using Training.Records.Demo;
using Training.Records.Examining;
using Training.Records.Interchange;
using Training.Records.Issuers;
using Training.Records.Learning;
using Training.Records.Ledger;
using Training.Records.Observing;
using Training.Records.Overviews;
using Training.Records.Practising;
using Training.Records.Proving;
using Training.Records.Publishing;
using Training.Records.Reminding;
using Training.Records.Results;
using Training.Records.Staffing;
using Training.Records.Storage;
using Training.Records.Writing;

namespace Training.Records;

/// <summary>Registers the records.</summary>
public static class TrainingRecordsServices
{
    /// <summary>
    /// Registers the database, the services and, unless another clock is there, <see cref="TimeProvider.System"/>.
    /// Identity is set up by the host: <c>AddIdentity&lt;Person, Role&gt;(…).AddEntityFrameworkStores&lt;TrainingDbContext&gt;()</c>.
    /// </summary>
    /// <param name="services">Where to.</param>
    /// <param name="connectionString">The SQLite connection string, <c>Data Source=data/training.db</c>.</param>
    public static IServiceCollection AddTrainingRecords(this IServiceCollection services, string connectionString)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddDbContext<TrainingDbContext, SqliteTrainingDbContext>(options => options.UseSqlite(connectionString));

        // One for the process: what is published.
        services.AddSingleton<Library>();
        services.AddSingleton(at => new Archive(at.GetRequiredService<IServiceScopeFactory>()));
        services.AddSingleton(at => new Graders(at.GetRequiredService<Archive>()));
        services.AddSingleton(at => new Questions(at.GetRequiredService<Graders>()));
        services.AddSingleton(at => new BlindScores(at.GetRequiredService<Questions>()));
        services.AddSingleton(at => new PaperDraw(at.GetRequiredService<Questions>(), at.GetRequiredService<BlindScores>()));
        services.AddSingleton(at => new RunJudging(at.GetRequiredService<Archive>(), at.GetRequiredService<Graders>()));
        services.AddSingleton(at => new Publisher(
            at.GetRequiredService<IServiceScopeFactory>(), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>(), Clock(at)));
        services.AddSingleton(at => new OpenDrafts(Clock(at)));
        services.AddSingleton<LogBook>().AddSingleton<LastWalk>().AddSingleton<SignedLists>();
        services.AddSingleton(at => new IssuerKeyFile(at.GetRequiredService<IssuerPlace>()));

        // One a request: what asks the database. The constructors are internal because their parts are.
        services.AddScoped(at => new PaperLines(Db(at), at.GetRequiredService<Archive>()));
        services.AddScoped(at => new RunLines(Db(at), at.GetRequiredService<Archive>()));
        services.AddScoped(at => new LogWriter(Db(at), Clock(at)));
        services.AddScoped(at => new RecordLines(Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<LogBook>(), Clock(at)));
        services.AddScoped(at => new PassedPapers(Db(at), at.GetRequiredService<Archive>()));
        services.AddScoped(at => new Issuing(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<LogBook>(), at.GetRequiredService<LogWriter>()));
        services.AddScoped(at => new PaperClosing(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<PaperDraw>(), at.GetRequiredService<Issuing>(),
            at.GetRequiredService<Tallies>(), Clock(at)));
        services.AddScoped(at => new Tallies(Db(at), at.GetRequiredService<Graders>()));
        services.AddScoped(at => new KeptWork(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<Questions>(), at.GetRequiredService<PaperDraw>(),
            at.GetRequiredService<RunJudging>(), at.GetRequiredService<Tallies>()));
        services.AddScoped(at => new ResultGroups(Db(at), at.GetRequiredService<Archive>()));
        services.AddScoped(at => new RuleResults(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<ResultGroups>(), at.GetRequiredService<KeptWork>()));
        services.AddScoped(at => new PaperResults(Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>()));
        services.AddScoped(at => new BesideRuns(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<RunLines>(), at.GetRequiredService<RunJudging>(),
            at.GetRequiredService<ExaminerPairs>(), Clock(at)));
        services.AddScoped(at => new ExaminerPairs(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<Graders>(), at.GetRequiredService<RunJudging>()));
        services.AddScoped(at => new ExaminerAgreement(Db(at), at.GetRequiredService<ExaminerPairs>()));
        services.AddScoped(at => new Recount(Db(at), at.GetRequiredService<KeptWork>(), at.GetRequiredService<ExaminerPairs>()));

        services.AddScoped<People>();
        services.AddScoped(at => new Revisions(Db(at), at.GetRequiredService<Library>()));
        services.AddScoped(at => new NameRemovals(Db(at), at.GetRequiredService<LogWriter>(), Clock(at)));
        services.AddScoped(at => new PeopleIntake(Db(at), at.GetRequiredService<People>(), at.GetRequiredService<UserManager<Person>>()));
        services.AddScoped<Reading>();
        services.AddScoped(at => new Practice(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>(), at.GetRequiredService<Questions>(),
            at.GetRequiredService<Tallies>(), Clock(at)));
        services.AddScoped(at => new Sittings(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>(), at.GetRequiredService<PaperClosing>(),
            at.GetRequiredService<PaperLines>(), Clock(at)));
        services.AddScoped(at => new Papers(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<PaperDraw>(), at.GetRequiredService<PaperClosing>(),
            at.GetRequiredService<PaperLines>(), Clock(at)));
        services.AddScoped(at => new Runs(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>(), at.GetRequiredService<RunJudging>(),
            at.GetRequiredService<PassedPapers>(), at.GetRequiredService<RunLines>(), at.GetRequiredService<Issuing>(),
            at.GetRequiredService<Tallies>(), at.GetRequiredService<ExaminerPairs>(), Clock(at)));
        services.AddScoped(at => new CompetencyRecords(
            Db(at), at.GetRequiredService<Archive>(), at.GetRequiredService<RecordLines>(), at.GetRequiredService<LogBook>(),
            at.GetRequiredService<LogWriter>()));
        services.AddScoped(at => new ShownJobs(Db(at), at.GetRequiredService<RecordLines>()));
        services.AddScoped(at => new CustomerProofs(
            Db(at), at.GetRequiredService<RecordLines>(), at.GetRequiredService<ShownJobs>(), at.GetRequiredService<LogBook>(),
            at.GetRequiredService<LogAudit>(), at.GetRequiredService<IssuerKeys>(), Clock(at)));
        AddSigning(services);
        services.AddScoped(at => new RunsAhead(Db(at), at.GetRequiredService<Runs>()));
        services.AddScoped(at => new Overview(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Reading>(), at.GetRequiredService<PaperClosing>(),
            at.GetRequiredService<PassedPapers>(), at.GetRequiredService<RecordLines>(), Clock(at)));
        services.AddScoped(at => new Coverage(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<RecordLines>(), Clock(at)));
        services.AddScoped(at => new JobBoard(Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<RecordLines>()));
        services.AddScoped(at => new Jobs(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<JobBoard>(), at.GetRequiredService<CustomerProofs>(), Clock(at)));
        services.AddScoped(at => new PersonFile(Db(at), new PersonFileParts(Db(at), at.GetRequiredService<LogBook>())));
        services.AddScoped(at => new Statements(
            Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>(), at.GetRequiredService<Graders>(), at.GetRequiredService<IssuerPlace>()));
        services.AddScoped(at => new PublishedCompetencies(Db(at), at.GetRequiredService<Library>(), at.GetRequiredService<Archive>()));
        services.AddScoped(at => new Reminders(Db(at), at.GetRequiredService<Coverage>(), at.GetRequiredService<RecordLines>()));
        services.AddScoped(at => new Calendars(Db(at), at.GetRequiredService<People>(), at.GetRequiredService<Reminders>(), Clock(at)));
        services.AddScoped(at => new WeeklyMails(Db(at), at.GetRequiredService<People>(), at.GetRequiredService<Reminders>(), Clock(at)));
        services.AddScoped(at => new Drafts(Db(at), at.GetRequiredService<Publisher>(), at.GetRequiredService<OpenDrafts>(), Clock(at)));
        services.AddScoped(at => new DraftPublishing(Db(at), at.GetRequiredService<Publisher>(), Clock(at)));
        services.AddScoped<DemoWorld>();
        return services;
    }

    /// <summary>Brings the database up to date and serves the newest publication; what the host calls before it listens.</summary>
    /// <param name="provider">The host's services.</param>
    public static async Task PrepareTrainingRecords(this IServiceProvider provider)
    {
        ArgumentNullException.ThrowIfNull(provider);
        await using (var scope = provider.CreateAsyncScope())
        {
            await LogMigration.RefuseRecordsWithoutLog(Db(scope.ServiceProvider));
            await Db(scope.ServiceProvider).Database.MigrateAsync();
        }

        await provider.GetRequiredService<Publisher>().Restore();
        await using var counting = provider.CreateAsyncScope();
        await counting.ServiceProvider.GetRequiredService<Recount>().WhereNothingIsCounted();
    }

    /// <summary>What signs, and what is shown to whoever asks. The host says where it stands (<see cref="IssuerPlace"/>).</summary>
    private static void AddSigning(IServiceCollection services)
    {
        services.AddScoped(at => new IssuerKeys(
            Db(at), at.GetRequiredService<IssuerPlace>(), at.GetRequiredService<IssuerKeyFile>(), Clock(at)));
        services.AddScoped(at => new SigningKeys(
            Db(at), at.GetRequiredService<IssuerKeys>(), at.GetRequiredService<IssuerKeyFile>(), Clock(at)));
        services.AddScoped(at => new Checkpoints(Db(at), at.GetRequiredService<LogBook>(), at.GetRequiredService<IssuerKeys>(), Clock(at)));
        services.AddScoped(at => new LogAudit(
            Db(at), at.GetRequiredService<LogBook>(), at.GetRequiredService<IssuerKeys>(), at.GetRequiredService<LastWalk>(), Clock(at)));
        services.AddScoped(at => new PublicLog(Db(at), at.GetRequiredService<LogBook>(), at.GetRequiredService<IssuerKeys>()));
        services.AddScoped(at => new StatusLists(
            Db(at), at.GetRequiredService<LogBook>(), at.GetRequiredService<Archive>(), at.GetRequiredService<IssuerKeys>(),
            at.GetRequiredService<SignedLists>(), Clock(at)));
        services.AddScoped(at => new ProofFiles(
            Db(at), at.GetRequiredService<CustomerProofs>(), at.GetRequiredService<LogBook>(), at.GetRequiredService<Checkpoints>(),
            at.GetRequiredService<PublicLog>(), at.GetRequiredService<StatusLists>(), at.GetRequiredService<IssuerKeys>(),
            at.GetRequiredService<Archive>(), Clock(at)));
    }

    private static TrainingDbContext Db(IServiceProvider at) => at.GetRequiredService<TrainingDbContext>();

    private static TimeProvider Clock(IServiceProvider at) => at.GetRequiredService<TimeProvider>();
}

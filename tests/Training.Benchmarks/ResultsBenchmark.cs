using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Training.Content;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Practising;
using Training.Records.Publishing;
using Training.Records.Results;
using Training.Records.Storage;
using Training.Sequencing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Benchmarks;

/// <summary>The pages of results, asked of a database on disk with five million answers of a hundred thousand people.</summary>
internal static class ResultsBenchmark
{
    private const int Rounds = 15;
    private static readonly ProcedureId Isolating = new("isolate-chassis");
    private static readonly Chance NinetySeconds = new(ChanceKind.Rule, "ninety-seconds");

    public static void Run(TextWriter output)
    {
        var (people, answers) = (100_000, Environment.GetEnvironmentVariable("RESULTS_ANSWERS") is { } asked ? int.Parse(asked, null) : 5_000_000);
        output.WriteLine($"## Results of {people:N0} people in 5,000 shops, {answers:N0} graded answers (wanted: each page under 300 ms)");
        output.WriteLine();
        RecordsOnDisk.Use((services, file) => Pages(output, services, file, people, answers)).GetAwaiter().GetResult();
    }

    private static async Task Pages(TextWriter output, ServiceProvider services, string file, int people, int answers)
    {
        await services.GetRequiredService<Publisher>().Publish(ContentFolder.Read(Path.Combine(AppContext.BaseDirectory, "Data", "content")));
        var filling = Stopwatch.GetTimestamp();
        var filled = await new ResultsFiller(services).Fill(people, answers);
        output.WriteLine($"Filled in {Stopwatch.GetElapsedTime(filling).TotalSeconds:0} s: {new FileInfo(file).Length / 1e9:0.0} GB on disk, {filled.Tallies:N0} tallies, {filled.WrongOrders:N0} kinds of wrong orders; the program's memory {Environment.WorkingSet / 1e9:0.0} GB.");
        output.WriteLine();
        output.WriteLine("| page | median | of which the processor worked |");
        output.WriteLine("| --- | --- | --- |");
        var trainer = new Actor(filled.Trainer, null, new HashSet<string> { Roles.Trainer });
        var owner = new Actor(filled.Trainer, filled.Shop, new HashSet<string> { Roles.Owner });
        await Page("a trainer's first page: the five surest faults", results => results.Worst(trainer, WorkSource.Practice, 5));
        await Page("all jobs", results => results.Overview(trainer, WorkSource.Practice));
        await Page("all jobs, for an owner", results => results.Overview(owner, WorkSource.Practice));
        await Page("a job", results => results.Of(trainer, Isolating, WorkSource.Practice));
        await Page("a job, one shop of 5,000", results => results.Of(trainer, Isolating, WorkSource.Practice, new(Cut.Shop, filled.Shop.ToString())));
        await Page("a job, one language", results => results.Of(trainer, Isolating, WorkSource.Practice, new(Cut.Language, "es")));
        await Page("a job, for an owner", results => results.Of(owner, Isolating, WorkSource.Practice));
        await Page("a rule, by revision, month, 5,000 shops and language", results => results.Of(trainer, Isolating, NinetySeconds, WorkSource.Practice));
        var order = (await With<RuleResults, Outcome<ProcedureResults, Refusal>>(services, results => results.Of(trainer, Isolating, WorkSource.Practice))).Value.Orders[0];
        await Page("the commonest wrong order with its replay", results => results.Look(trainer, Isolating, WorkSource.Practice, order.Code, "en"));
        await Row("the papers of a competency, 100,000 papers", () => With<PaperResults, bool>(services, async papers =>
            (await papers.Of(trainer, new("electrical-isolation"))).Value.Texts[0].Figures!.Passed.Whole == people));
        output.WriteLine();
        await HandIns(output, services, filled.Technician, filled.Shop);
        // The hand-ins of the line before are among them.
        await Again(output, services, answers);
        var (clock, processor) = await Measure.Asked(1, Rounds, async () =>
        {
            var agreement = (await With<ExaminerAgreement, Outcome<AgreementView, Refusal>>(services, pairs => pairs.Look(trainer))).Value;
            if (agreement.Runs != 20_000 || agreement.Agreement is null) throw new InvalidOperationException("The runs that two observed are not there.");
        });
        output.WriteLine($"How far examiners agree, 20,000 runs observed by two: {clock:0.0} ms, of which the processor worked {processor:0.0} ms (wanted: under 300 ms).");

        Task Page<T>(string name, Func<RuleResults, Task<Outcome<T, Refusal>>> ask) =>
            Row(name, () => With<RuleResults, bool>(services, async results => (await ask(results)).IsOk));

        async Task Row(string name, Func<Task<bool>> ask)
        {
            var (clock, processor) = await Measure.Asked(1, Rounds, async () =>
            {
                if (!await ask()) throw new InvalidOperationException($"No answer for: {name}");
            });
            output.WriteLine($"| {name} | {clock:0.0} ms | {processor:0.0} ms |");
        }
    }

    /// <summary>What counting costs the one who hands an answer in.</summary>
    private static async Task HandIns(TextWriter output, ServiceProvider services, PersonId person, ShopId shop)
    {
        var technician = new Actor(person, shop, new HashSet<string> { Roles.Technician });
        var times = new List<double>();
        for (var round = 0; round < 40; round++)
        {
            var start = 0L;
            await With<Practice, bool>(services, async practice =>
            {
                var asked = (await practice.Draw(technician, new("customer-waiting"))).Value;
                start = Stopwatch.GetTimestamp();
                return (await practice.HandIn(technician, new(Guid.NewGuid(), asked.Ticket, """[{"step":"key-off"},{"step":"park-brake"}]"""))).IsOk;
            });
            if (round > 5) times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        output.WriteLine($"An answer that is handed in, graded, counted and on disk: {Measure.MedianOf([.. times]):0.0} ms (median of {times.Count}).");
    }

    /// <summary>Counts everything again from the answers, and looks whether the tallies are those that were kept.</summary>
    private static async Task Again(TextWriter output, ServiceProvider services, int answers)
    {
        var kept = await Practised(services);
        using var process = Process.GetCurrentProcess();
        var (start, worked) = (Stopwatch.GetTimestamp(), process.TotalProcessorTime);
        var counted = await With<Recount, int>(services, recount => recount.Everything());
        process.Refresh();
        var (took, busy) = (Stopwatch.GetElapsedTime(start), process.TotalProcessorTime - worked);
        if (counted < answers || await Practised(services) != kept) throw new InvalidOperationException("What was counted again is not what was kept.");
        output.WriteLine($"Counting all {counted:N0} orders again: {took.TotalSeconds:0.0} s, of which the processors worked {busy.TotalSeconds:0.0} s ({took.TotalMicroseconds / counted:0.0} µs an order); the tallies are those that were kept.");
        output.WriteLine();
    }

    /// <summary>The tallies of practice as one text.</summary>
    private static Task<string> Practised(ServiceProvider services) => With<TrainingDbContext, string>(services, async db =>
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        await foreach (var tally in db.Tallies.AsNoTracking().Where(tally => tally.Source == WorkSource.Practice)
            .OrderBy(tally => tally.Procedure).ThenBy(tally => tally.Cut).ThenBy(tally => tally.Group).AsAsyncEnumerable())
            hash.AppendData(Encoding.UTF8.GetBytes($"{tally.Procedure} {tally.Cut} {tally.Group} {string.Join(' ', tally.People)} {string.Join(' ', tally.Wrong)}\n"));
        return Convert.ToHexString(hash.GetHashAndReset());
    });

    private static async Task<TResult> With<TService, TResult>(ServiceProvider services, Func<TService, Task<TResult>> ask) where TService : notnull
    {
        await using var scope = services.CreateAsyncScope();
        return await ask(scope.ServiceProvider.GetRequiredService<TService>());
    }
}

using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Storage;

namespace Training.Benchmarks;

/// <summary>A database of its own on disk, which is gone afterwards.</summary>
internal static class RecordsOnDisk
{
    /// <summary>Lets somebody work with a prepared database.</summary>
    /// <param name="work">The work: with the services, and with the database's file.</param>
    /// <param name="clock">Tells the time in place of the machine.</param>
    public static async Task Use(Func<ServiceProvider, string, Task> work, TimeProvider? clock = null)
    {
        var folder = Directory.CreateTempSubdirectory("benchmark-").FullName;
        try
        {
            var file = Path.Combine(folder, "training.db");
            var registered = new ServiceCollection();
            registered.AddLogging();
            registered.AddSingleton(clock ?? TimeProvider.System);
            registered.AddTrainingRecords($"Data Source={file}");
            registered.AddIdentityCore<Person>().AddRoles<Role>().AddEntityFrameworkStores<TrainingDbContext>();
            await using var services = registered.BuildServiceProvider();
            await services.PrepareTrainingRecords();
            await work(services, file);
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }
}

using Microsoft.EntityFrameworkCore;
using Training.Records.Storage;

namespace Training.Records.Ledger;

/// <summary>Records from before there was a log cannot be written into it afterwards: that would be dating back.</summary>
internal static class LogMigration
{
    private const string Name = "_Log";

    /// <summary>Stops before the migration that would drop what such records say.</summary>
    /// <exception cref="InvalidOperationException">The database holds records and no log.</exception>
    public static async Task RefuseRecordsWithoutLog(TrainingDbContext db)
    {
        var applied = (await db.Database.GetAppliedMigrationsAsync()).ToList();
        if (applied.Count == 0 || applied.Exists(migration => migration.EndsWith(Name, StringComparison.Ordinal))) return;
        if (await db.Database.SqlQueryRaw<int>("SELECT COUNT(*) AS Value FROM CompetencyRecords").SingleAsync() > 0)
        {
            throw new InvalidOperationException(
                "The records of this database were made before there was a log, and nothing can be dated back into one. "
                + "Keep the folder of the data as it is and begin a new one; a demo's folder can be deleted.");
        }
    }
}

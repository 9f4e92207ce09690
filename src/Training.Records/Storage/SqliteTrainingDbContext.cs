using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Training.Records.Storage;

/// <summary>The records in a SQLite file.</summary>
/// <param name="options">The options.</param>
public sealed class SqliteTrainingDbContext(DbContextOptions<SqliteTrainingDbContext> options) : TrainingDbContext(options)
{
    /// <inheritdoc/>
    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder)
    {
        ArgumentNullException.ThrowIfNull(optionsBuilder);
        optionsBuilder.AddInterceptors(DurableConnections.Instance);
    }
}

/// <summary>
/// Makes every connection write durably: with a write-ahead log, <c>FULL</c> waits for the disk at each commit, so that
/// what somebody was told is saved outlives a crash of the machine (https://www.sqlite.org/pragma.html#pragma_synchronous).
/// </summary>
internal sealed class DurableConnections : DbConnectionInterceptor
{
    // What is deleted is overwritten (https://www.sqlite.org/pragma.html#pragma_secure_delete): a name that was removed is gone.
    private const string Settings = "PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON;";

    public static DurableConnections Instance { get; } = new();

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Settings;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Settings;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}

/// <summary>Makes a context for <c>dotnet ef</c>, which writes migrations.</summary>
internal sealed class DesignTimeContexts : IDesignTimeDbContextFactory<SqliteTrainingDbContext>
{
    public SqliteTrainingDbContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteTrainingDbContext>().UseSqlite("Data Source=design.db").Options);
}

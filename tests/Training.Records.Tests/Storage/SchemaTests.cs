using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Training.Records.Accounts;
using Training.Records.Storage;

namespace Training.Records.Tests.Storage;

public sealed class SchemaTests
{
    [Fact]
    public async Task The_model_has_no_change_that_no_migration_knows()
    {
        await using var world = await TestWorld.Empty();
        Assert.False(await world.Db(db => Task.FromResult(db.Database.HasPendingModelChanges())));
    }

    [Fact]
    public async Task Migrating_and_creating_give_the_same_schema()
    {
        await using var world = await TestWorld.Empty();
        var migrated = await Schema(world.ConnectionString);
        var created = $"Data Source={world.DatabaseFile}.created;Pooling=False";
        await using (var db = Context(created)) await db.Database.EnsureCreatedAsync(TestContext.Current.CancellationToken);
        Assert.Equal(await Schema(created), migrated);
        Assert.Contains("Papers", migrated, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Foreign_keys_are_on_and_what_is_written_waits_for_the_disk()
    {
        await using var world = await TestWorld.Empty();
        Assert.Equal("1", await Ask("PRAGMA foreign_keys"));
        Assert.Equal("wal", await Ask("PRAGMA journal_mode"));
        Assert.Equal("2", await Ask("PRAGMA synchronous"));

        Task<string> Ask(string pragma) => world.Db(async db =>
        {
            await db.Database.OpenConnectionAsync();
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.CommandText = pragma;
            return $"{await command.ExecuteScalarAsync()}";
        });
    }

    [Fact]
    public async Task Every_database_has_the_roles()
    {
        await using var world = await TestWorld.Empty();
        Assert.Equal(Roles.All.Order(), (await world.Db(db => db.Roles.Select(role => role.Name!).ToListAsync())).Order());
    }

    [Fact]
    public async Task Nothing_that_somebody_was_told_is_kept_goes_away_because_something_else_does()
    {
        await using var world = await TestWorld.Empty();
        var keys = await world.Db(db => Task.FromResult(db.Model.GetEntityTypes()
            .Where(type => type.ClrType.Namespace!.StartsWith("Training.", StringComparison.Ordinal))
            .SelectMany(type => type.GetForeignKeys()).ToList<IReadOnlyForeignKey>()));
        Assert.NotEmpty(keys);
        Assert.All(keys, key => Assert.Equal(DeleteBehavior.Restrict, key.DeleteBehavior));
    }

    private static SqliteTrainingDbContext Context(string connectionString) =>
        new(new DbContextOptionsBuilder<SqliteTrainingDbContext>().UseSqlite(connectionString).Options);

    private static async Task<string> Schema(string connectionString)
    {
        await using var db = Context(connectionString);
        // A column that came later stands at another place of its table; that and its default for older rows make no difference.
        var statements = await db.Database.SqlQueryRaw<string>(
            """
            SELECT t.name || ' column ' || c.name || ' ' || c.type || ' ' || c."notnull" || ' ' || c.pk AS Value
                FROM sqlite_master t, pragma_table_info(t.name) c WHERE t.type = 'table' AND t.name NOT LIKE '__EF%'
            UNION ALL
            SELECT t.name || ' key ' || k."from" || ' ' || k."table" || ' ' || k."to" || ' ' || k.on_delete
                FROM sqlite_master t, pragma_foreign_key_list(t.name) k WHERE t.type = 'table' AND t.name NOT LIKE '__EF%'
            UNION ALL
            SELECT sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL AND name NOT LIKE '__EF%'
            ORDER BY 1
            """).ToListAsync();
        return string.Join('\n', statements);
    }
}

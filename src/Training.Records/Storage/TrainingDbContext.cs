using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Training.Records.Accounts;

namespace Training.Records.Storage;

/// <summary>Everything that the records keep. Other code asks the services, which know who may see what.</summary>
public abstract class TrainingDbContext : IdentityDbContext<Person, Role, PersonId>
{
    private protected TrainingDbContext(DbContextOptions options) : base(options)
    {
    }

    internal DbSet<Shop> Shops => Set<Shop>();
}

/// <summary>The records in a SQLite file.</summary>
public sealed class SqliteTrainingDbContext(DbContextOptions<SqliteTrainingDbContext> options) : TrainingDbContext(options)
{
}

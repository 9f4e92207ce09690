using Microsoft.Extensions.DependencyInjection;

namespace Training.Records;

/// <summary>Registers the records.</summary>
public static class TrainingRecordsServices
{
    /// <summary>
    /// Registers the database, the services and <see cref="TimeProvider.System"/>, unless another clock is there. Identity is set up by the host:
    /// <c>AddIdentity&lt;Person, Role&gt;(…).AddEntityFrameworkStores&lt;TrainingDbContext&gt;()</c>.
    /// </summary>
    /// <param name="services">Where to.</param>
    /// <param name="connectionString">The SQLite connection string, <c>Data Source=data/training.db</c>.</param>
    public static IServiceCollection AddTrainingRecords(this IServiceCollection services, string connectionString) =>
        throw new NotImplementedException();

    /// <summary>Brings the database up to date and serves the newest publication; what the host calls before it listens.</summary>
    /// <param name="provider">The host's services.</param>
    public static Task PrepareTrainingRecords(this IServiceProvider provider) => throw new NotImplementedException();
}

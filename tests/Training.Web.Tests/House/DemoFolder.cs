using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace Training.Web.Tests.House;

/// <summary>
/// The data folder of a house in which the demo's months have passed: its database and its keys. Living through them takes
/// longer than most tests; it is done once in a run, and every house begins with a copy.
/// </summary>
internal static class DemoFolder
{
    private static readonly Lazy<string> Made = new(Make);

    /// <summary>Furnishes a house: where its things lie, and passwords that are quick to check, since they guard nothing.</summary>
    /// <param name="builder">The house that is being put together.</param>
    /// <param name="data">Its data folder.</param>
    public static void Furnish(IWebHostBuilder builder, string data)
    {
        builder.UseEnvironment("Development");
        builder.UseSetting("Data:Folder", data);
        // As often as the demo does: otherwise whoever signs in for the first time is hashed anew.
        builder.ConfigureServices(services => services.Configure<PasswordHasherOptions>(options => options.IterationCount = 1000));
    }

    /// <summary>Puts the demo into a data folder that is still empty; one that is in use stays as it is.</summary>
    public static void CopyInto(string data)
    {
        if (Directory.EnumerateFileSystemEntries(data).Any()) return;
        foreach (var file in Directory.EnumerateFiles(Made.Value, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(data, Path.GetRelativePath(Made.Value, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    private static string Make()
    {
        var folder = Directory.CreateTempSubdirectory("training-demo-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        string database;
        using (var house = new FirstHouse(folder)) database = house.Services.GetRequiredService<Startup.House>().Database;
        // What the connections kept beside the file goes into it when the last of them is closed.
        using (var connection = new SqliteConnection($"Data Source={database}")) SqliteConnection.ClearPool(connection);
        return File.Exists($"{database}-wal") ? throw new InvalidOperationException("The demo's database is still in use.") : folder;
    }

    private sealed class FirstHouse(string data) : WebApplicationFactory<Program>
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder) => Furnish(builder, data);
    }
}

using System.Globalization;
using System.Security.Cryptography;
using Training.Content;
using Training.Records;
using Training.Records.Accounts;
using Training.Records.Demo;
using Training.Records.Publishing;
using Training.Records.Results;

namespace Training.Web.Startup;

/// <summary>What happens before the first page: the database is brought up to date, the content published, the demo seeded.</summary>
internal static class FirstStart
{
    public static async Task Prepare(this WebApplication app)
    {
        Directory.CreateDirectory(app.Services.GetRequiredService<House>().Data);
        await app.Services.PrepareTrainingRecords();
        await using var scope = app.Services.CreateAsyncScope();
        if (app.Environment.IsDevelopment() && app.Services.GetRequiredService<House>() is var house && Directory.Exists(house.Content))
            await scope.ServiceProvider.GetRequiredService<DemoWorld>().Seed(ContentFolder.Read(house.Content));
        if (await app.Services.GetRequiredService<ContentWatch>().Begin() is { IsHeldBack: true } state)
            foreach (var problem in state.Problems) Console.Error.WriteLine(problem.File == Publisher.WholeFolder ? $"{problem}" : $"content/{problem}");
        if (app.Configuration.GetValue<bool>("Results:CountAgain"))
            Console.WriteLine($"Counted again: {await scope.ServiceProvider.GetRequiredService<Recount>().Everything()} orders of work.");
        var people = scope.ServiceProvider.GetRequiredService<People>();
        if (await people.AwaitsFirstAdministrator()) app.Services.GetRequiredService<SetUpCode>().Make();
    }

    public static void Announce(this WebApplication app) => app.Lifetime.ApplicationStarted.Register(() =>
    {
        var address = app.Urls.FirstOrDefault() ?? "";
        Console.WriteLine($"Open {address}");
        if (app.Services.GetRequiredService<SetUpCode>().Current is { } code)
            Console.WriteLine($"Nobody is administrator yet. Open {address}/set-up and give this code: {code}");
        if (!app.Environment.IsDevelopment()) return;
        Console.WriteLine($"Demo sign-ins, all with the password “{DemoWorld.Password}”:");
        foreach (var person in DemoWorld.SignIns)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"  {person.UserName,-12} {string.Join(", ", person.Roles),-24} {person.DisplayName}, {person.Place}. {person.Story}"));
        }
    });
}

/// <summary>
/// The code that whoever holds the console gives to become the first administrator: a stranger who finds the page
/// first can do nothing with it.
/// </summary>
public sealed class SetUpCode
{
    /// <summary>The code; null where none is needed.</summary>
    public string? Current { get; private set; }

    /// <summary>Makes a fresh code of some 60 bits, in letters and digits that are hard to mistake.</summary>
    public void Make() => Current = RandomNumberGenerator.GetString("ABCDEFGHJKLMNPQRSTUVWXYZ23456789", 12);

    /// <summary>Whether a code is the right one; compared in constant time.</summary>
    /// <param name="code">What was typed.</param>
    public bool Fits(string? code) =>
        Current is not null && code is not null && CryptographicOperations.FixedTimeEquals(
            System.Text.Encoding.UTF8.GetBytes(code.Trim().ToUpperInvariant()), System.Text.Encoding.UTF8.GetBytes(Current));

    /// <summary>Ends it, once there is an administrator.</summary>
    public void End() => Current = null;
}

using Mono.Cecil;

namespace Training.Architecture.Tests;

/// <summary>The ground floor works on what it is given and nothing else; everybody else asks the clock that they are given.</summary>
public sealed class PurityTests
{
    private static readonly string[] FilesAndWeb =
    [
        "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo",
        "System.IO.StreamReader", "System.IO.StreamWriter", "System.IO.Path", "System.Console",
        "System.Diagnostics.Process",
    ];

    private static readonly string[] ClocksAndDice =
    [
        "System.TimeProvider", "System.Diagnostics.Stopwatch", "System.Threading.Timer", "System.Random",
        "System.Security.Cryptography.RandomNumberGenerator",
    ];

    private static readonly string[] OwnClocks =
    [
        "System.DateTime::get_Now", "System.DateTime::get_UtcNow", "System.DateTime::get_Today",
        "System.DateTimeOffset::get_Now", "System.DateTimeOffset::get_UtcNow",
        "NodaTime.SystemClock::get_Instance", "System.Diagnostics.Stopwatch::GetTimestamp",
    ];

    public static TheoryData<string> GroundFloor => ["Training.Sequencing", "Training.Measures", "Training.Proofs"];

    // Signatures come from a library that is looked after by those who know them; nothing else does.
    [Theory]
    [MemberData(nameof(GroundFloor))]
    public void The_ground_floor_needs_no_package_but_for_signatures(string project) =>
        Assert.Equal(project == "Training.Proofs" ? ["NSec.Cryptography"] : [], Named(project).Packages);

    [Theory]
    [MemberData(nameof(GroundFloor))]
    public void The_ground_floor_opens_no_file_and_asks_no_network_clock_or_dice(string project)
    {
        var used = Tree.Some(Named(project).Built().GetTypeReferences(), "types that the ground floor uses").Select(type => type.FullName).ToList();
        Assert.Empty(used.Intersect(FilesAndWeb.Concat(ClocksAndDice)));
        Assert.DoesNotContain(used, name => name.StartsWith("System.Net", StringComparison.Ordinal));
    }

    // Iterators ask on which thread they are made; that is the compiler's doing, and the only thing of the environment.
    [Theory]
    [MemberData(nameof(GroundFloor))]
    public void The_ground_floor_asks_nothing_of_its_environment(string project) =>
        Assert.DoesNotContain(Calls(Named(project).Built()), call =>
            call.StartsWith("System.Environment::", StringComparison.Ordinal) && call != "System.Environment::get_CurrentManagedThreadId");

    [Theory]
    [MemberData(nameof(GroundFloor))]
    public void The_ground_floor_makes_no_ids_of_its_own(string project) =>
        Assert.DoesNotContain(Calls(Named(project).Built()), call => call is "System.Guid::NewGuid" or "System.Guid::CreateVersion7");

    [Fact]
    public void Nobody_asks_a_clock_but_the_one_they_are_given() =>
        Assert.Empty(Tree.Projects.SelectMany(project => Calls(project.Built()).Intersect(OwnClocks).Select(call => $"{project.Name}: {call}")));

    [Fact]
    public void Calls_are_seen_at_all() =>
        Assert.Contains("System.TimeProvider::GetUtcNow", Tree.Projects.SelectMany(project => Calls(project.Built())));

    private static SourceProject Named(string name) => Tree.Projects.Single(project => project.Name == name);

    private static List<string> Calls(ModuleDefinition module) =>
        [.. module.GetMemberReferences().Select(member => $"{member.DeclaringType.FullName}::{member.Name}").Distinct()];
}

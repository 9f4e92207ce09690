using System.Text.RegularExpressions;
using Mono.Cecil;

namespace Training.Architecture.Tests;

/// <summary>Files that fit in the head, names that say something, links that lead somewhere.</summary>
public sealed partial class SourceTests
{
    private const int MostLines = 400;

    [Fact]
    public void No_source_file_has_more_than_400_lines() =>
        Assert.DoesNotContain(new[] { "src", "tests", "wwwroot" }.SelectMany(folder => Tree.Files(folder, ".cs", ".cshtml", ".js", ".css"))
            .Select(file => (File: Path.GetRelativePath(Tree.Root, file), Lines: File.ReadLines(file).Count())),
            item => item.Lines > MostLines);

    // The compiler sees to the blanks within a file and to usings that nobody needs (IDE0055, IDE0005); not to these two.
    [Fact]
    public void Every_source_file_ends_with_one_whole_line() =>
        Assert.Empty(new[] { "src", "tests", "wwwroot" }.SelectMany(folder => Tree.Files(folder, ".cs", ".cshtml", ".js", ".css", ".csproj"))
            .Where(file => !EndsWell(File.ReadAllText(file))).Select(file => Path.GetRelativePath(Tree.Root, file)));

    [Theory]
    [InlineData("}\n", true)]
    [InlineData("}", false)]
    [InlineData("}\n\n", false)]
    [InlineData("}\r\n", false)]
    public void An_end_is_known_when_seen(string text, bool isWell) => Assert.Equal(isWell, EndsWell(text));

    [Fact]
    public void Usings_stand_in_their_order() =>
        Assert.Empty(new[] { "src", "tests" }.SelectMany(folder => Tree.Files(folder, ".cs"))
            .Where(file => !AreInOrder(File.ReadLines(file))).Select(file => Path.GetRelativePath(Tree.Root, file)));

    [Theory]
    [InlineData(true, "using System.Text;", "using A;", "using A.B;", "using static A.C;", "using D = A.D;")]
    [InlineData(false, "using A;", "using System.Text;")]
    [InlineData(false, "using A.B;", "using A;")]
    [InlineData(false, "using static A.C;", "using B;")]
    [InlineData(false, "using D = A.D;", "using static A.C;")]
    public void An_order_of_usings_is_known_when_seen(bool isRight, params string[] lines) => Assert.Equal(isRight, AreInOrder(lines));

    [Fact]
    public void No_type_has_a_name_that_says_nothing() =>
        Assert.Empty(Tree.Projects.SelectMany(project => Tree.Some(project.Built().GetTypes(), $"types of {project.Name}"))
            .Where(type => type.FullName.StartsWith("Training.", StringComparison.Ordinal) && EmptyName().IsMatch(NameOf(type))).Select(type => type.FullName));

    [Theory]
    [InlineData("RunManager")]
    [InlineData("DateHelper")]
    [InlineData("TextUtils")]
    public void Such_a_name_is_known_when_seen(string name) => Assert.Matches(EmptyName(), name);

    [Fact]
    public void Links_in_the_papers_at_the_root_lead_somewhere()
    {
        var papers = Tree.Some(Directory.GetFiles(Tree.Root, "*.md"), "papers at the root");
        Assert.Contains("README.md", papers.Select(Path.GetFileName));
        Tree.Some(papers.SelectMany(file => Link().Matches(File.ReadAllText(file))), "links in them");
        Assert.Empty(papers.SelectMany(file => DeadLinks(File.ReadAllText(file)).Select(link => $"{Path.GetFileName(file)}: {link}")));
    }

    [Fact]
    public void A_dead_link_is_known_when_seen() =>
        Assert.Equal(["src/Nowhere/", "no such file.md"], DeadLinks(
            "[web](https://example.org) [here](#part) [src](src/) [a file](Training.sln \"titled\") [gone](src/Nowhere/) ![picture](<no such file.md>)"));

    private static bool EndsWell(string text) => text.EndsWith('\n') && !text.EndsWith("\n\n", StringComparison.Ordinal) && !text.EndsWith("\r\n", StringComparison.Ordinal);

    // Namespaces, then static types, then other names; those of the system first, the rest by the alphabet.
    private static bool AreInOrder(IEnumerable<string> lines)
    {
        var usings = lines.TakeWhile(line => !line.StartsWith("namespace", StringComparison.Ordinal)).Select(line => Using().Match(line)).Where(match => match.Success)
            .Select(match => (Kind: match.Groups["alias"].Success ? 2 : match.Groups["static"].Success ? 1 : 0, Name: match.Groups["name"].Value)).ToList();
        return usings.SequenceEqual(usings.OrderBy(item => item.Kind)
            .ThenBy(item => item.Kind == 2 || item.Name.Split('.')[0] != "System").ThenBy(item => item.Name.ToUpperInvariant(), StringComparer.Ordinal));
    }

    private static IEnumerable<string> DeadLinks(string markdown) => Link().Matches(markdown)
        .Select(match => match.Groups["to"].Value)
        .Where(to => !to.Contains("://", StringComparison.Ordinal) && !to.StartsWith('#') && !to.StartsWith("mailto:", StringComparison.Ordinal))
        .Where(to => !Path.Exists(Path.Combine(Tree.Root, Uri.UnescapeDataString(to.Split('#')[0]))));

    private static string NameOf(TypeDefinition type) => type.Name.Split('`')[0];

    [GeneratedRegex(@"^using (?<static>static )?((?<alias>\w+) = )?(?<name>[\w.:]+).*;$")]
    private static partial Regex Using();

    [GeneratedRegex("(Manager|Helpers?|Utils?|Utilities)$")]
    private static partial Regex EmptyName();

    [GeneratedRegex("""\]\((?:<(?<to>[^>]+)>|(?<to>[^)\s]+))(?:\s+"[^"]*")?\)""")]
    private static partial Regex Link();
}

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

    private static IEnumerable<string> DeadLinks(string markdown) => Link().Matches(markdown)
        .Select(match => match.Groups["to"].Value)
        .Where(to => !to.Contains("://", StringComparison.Ordinal) && !to.StartsWith('#') && !to.StartsWith("mailto:", StringComparison.Ordinal))
        .Where(to => !Path.Exists(Path.Combine(Tree.Root, Uri.UnescapeDataString(to.Split('#')[0]))));

    private static string NameOf(TypeDefinition type) => type.Name.Split('`')[0];

    [GeneratedRegex("(Manager|Helpers?|Utils?|Utilities)$")]
    private static partial Regex EmptyName();

    [GeneratedRegex("""\]\((?:<(?<to>[^>]+)>|(?<to>[^)\s]+))(?:\s+"[^"]*")?\)""")]
    private static partial Regex Link();
}

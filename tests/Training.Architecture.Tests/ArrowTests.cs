namespace Training.Architecture.Tests;

/// <summary>Arrows between the projects go down only.</summary>
public sealed class ArrowTests
{
    // What each project may name of ours. A project that is not listed is a red test: decide where it stands.
    private static readonly Dictionary<string, string[]> Below = new()
    {
        ["Training.Sequencing"] = [],
        ["Training.Measures"] = [],
        ["Training.Proofs"] = [],
        ["Training.Content"] = ["Training.Sequencing", "Training.Measures"],
        ["Training.Records"] = ["Training.Content", "Training.Sequencing", "Training.Measures", "Training.Proofs"],
        ["Training.Web"] = ["Training.Records", "Training.Content", "Training.Sequencing", "Training.Measures", "Training.Proofs"],
        ["Training.Cli"] = ["Training.Content", "Training.Sequencing", "Training.Measures", "Training.Proofs"],
    };

    [Fact]
    public void Every_project_has_its_place_in_the_house() =>
        Assert.Equal(Below.Keys.Order(StringComparer.Ordinal), Tree.Projects.Select(project => project.Name));

    [Fact]
    public void A_project_file_names_only_projects_below_it() =>
        Assert.Empty(Tree.Projects.SelectMany(project => project.Projects.Except(Below[project.Name]).Select(other => $"{project.Name} → {other}")));

    [Fact]
    public void A_built_project_uses_only_projects_below_it() =>
        Assert.Empty(Tree.Projects.SelectMany(project => project.Built().AssemblyReferences.Select(reference => reference.Name)
            .Where(name => name.StartsWith("Training.", StringComparison.Ordinal)).Except(Below[project.Name])
            .Select(other => $"{project.Name} → {other}")));

    [Fact]
    public void The_arrows_are_seen_at_all() =>
        Assert.Contains("Training.Records", Tree.Projects.Single(project => project.Name == "Training.Web").Built()
            .AssemblyReferences.Select(reference => reference.Name));

    [Fact]
    public void Only_the_records_name_EF_Core()
    {
        var users = Tree.Projects.Where(project => project.Built().AssemblyReferences
            .Any(reference => reference.Name.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal))).Select(project => project.Name);
        Assert.Equal(["Training.Records"], users);
    }

    [Fact]
    public void Only_the_web_names_the_web()
    {
        var users = Tree.Projects.Where(project => project.Built().AssemblyReferences
            .Any(reference => reference.Name.StartsWith("Microsoft.AspNetCore.Mvc", StringComparison.Ordinal))).Select(project => project.Name);
        Assert.Equal(["Training.Web"], users);
    }
}

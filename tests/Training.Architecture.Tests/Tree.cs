using System.Reflection;
using System.Xml.Linq;
using Mono.Cecil;

namespace Training.Architecture.Tests;

/// <summary>The repository as it lies on disk and as it was built. Every list is derived, and an empty one is a fault.</summary>
internal static class Tree
{
    public static string Root { get; } = FindRoot();

    /// <summary>The projects below <c>src/</c>, by name.</summary>
    public static IReadOnlyList<SourceProject> Projects { get; } = Some(
        Directory.GetFiles(Path.Combine(Root, "src"), "*.csproj", SearchOption.AllDirectories).Select(SourceProject.Read)
            .OrderBy(project => project.Name, StringComparer.Ordinal), "projects below src/");

    /// <summary>The web project as it was built.</summary>
    public static Assembly Web { get; } = typeof(Training.Web.Startup.House).Assembly;

    /// <summary>Files that people write, by a pattern of their names, without what the build and the database tool make.</summary>
    public static IReadOnlyList<string> Files(string folder, params string[] endings) => Some(
        Directory.GetFiles(Path.Combine(Root, folder), "*", SearchOption.AllDirectories)
            .Where(file => endings.Contains(Path.GetExtension(file)))
            .Where(file => !Path.GetRelativePath(Root, file).Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj" or "Migrations"))
            .Order(StringComparer.Ordinal), $"files in {folder}");

    public static IReadOnlyList<T> Some<T>(IEnumerable<T> things, string what)
    {
        var list = things.ToList();
        Assert.True(list.Count > 0, $"There are no {what}: the rule would hold of nothing.");
        return list;
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Training.sln"))) return folder.FullName;
        throw new DirectoryNotFoundException("Training.sln is not above the tests.");
    }
}

/// <summary>A project: what its file asks for and what was built of it.</summary>
internal sealed record SourceProject(string Name, string Folder, IReadOnlyList<string> Projects, IReadOnlyList<string> Packages)
{
    /// <summary>The built assembly, which lies beside the tests because they refer to it.</summary>
    public ModuleDefinition Built() => ModuleDefinition.ReadModule(Path.Combine(AppContext.BaseDirectory, Name + ".dll"));

    public static SourceProject Read(string file)
    {
        var xml = XDocument.Load(file);
        return new(Path.GetFileNameWithoutExtension(file), Path.GetDirectoryName(file)!,
            [.. Included(xml, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')))],
            [.. Included(xml, "PackageReference")]);
    }

    private static IEnumerable<string> Included(XDocument xml, string element) =>
        xml.Descendants(element).Select(item => (string)item.Attribute("Include")!);
}

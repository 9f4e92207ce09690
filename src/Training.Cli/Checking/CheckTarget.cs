using Training.Content;
using Training.Content.Procedures;

namespace Training.Cli.Checking;

/// <summary>What was found at one path: how many files, and their problems under the names by which they were asked for.</summary>
internal sealed record CheckTarget(int Files, IReadOnlyList<ContentProblem> Problems)
{
    /// <summary>The files, where the path is a content folder; null for single files.</summary>
    public IReadOnlyList<ContentFile>? Content { get; private init; }

    private static readonly string[] Folders = ["modules", "procedures", "scenarios", "competencies", "glossary"];

    public static CheckTarget At(string path, TextReader input)
    {
        try
        {
            if (path == InputFile.Dash)
                return InputFile.Content(path, input).Match(file => new(1, ProcedureFile.Check(file).Problems), problem => new CheckTarget(1, [problem]));
            if (Directory.Exists(path)) return Folder(path);
            return InputFile.Try(path, () => SingleFile(path)).Match(found => found, problem => new(1, [problem]));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new(0, [InputFile.Problem(path, "The folder, or a file in it, cannot be read: see that you may read it.")]);
        }
    }

    private static CheckTarget Folder(string path)
    {
        if (IsContent(Path.Combine(path, "content"))) path = Path.Combine(path, "content");
        if (IsContent(path)) return Whole(path);
        string[] procedures = [.. Directory.EnumerateFiles(path, "*.yaml").Order(StringComparer.Ordinal)];
        if (procedures.Length == 0)
            return new(0, [InputFile.Problem(path, "There is no content here: name a folder that holds modules/, procedures/, scenarios/ or competencies/, or a file.")]);
        CheckTarget[] found = [.. procedures.Select(file => ContentFolder.WhyNot(file) is { } fault ? new(1, [InputFile.Problem(file, fault)]) : SingleFile(file))];
        return new(found.Sum(target => target.Files), [.. found.SelectMany(target => target.Problems)]);
    }

    // A procedure means something by itself. The other files mean something within their content folder alone:
    // the whole is read, and what concerns this file is told.
    private static CheckTarget SingleFile(string path)
    {
        var (name, root) = (Path.GetFileName(path), ContentRootOf(path));
        if (IsYaml(name) && (root is null || (ParentName(path) == "procedures" && name.Count(c => c == '.') == 1)))
            return new(1, ProcedureFile.Check(ContentFolder.ReadFile(path, path)).Problems);
        if (root is null)
            return new(1, [InputFile.Problem(path, "This file is no procedure, and it stands in no content folder: lessons, scenarios, competencies and pictures are checked in their places there.")]);
        var own = Path.GetRelativePath(root, Path.GetFullPath(path)).Replace(Path.DirectorySeparatorChar, '/');
        return new(1, [.. ContentReader.Read(ContentFolder.Read(root)).Problems
            .Where(problem => problem.File == own)
            .Select(problem => problem with { File = path })]);
    }

    private static CheckTarget Whole(string root)
    {
        var files = ContentFolder.Read(root);
        return new(files.Count, [.. ContentReader.Read(files).Problems
            .Select(problem => problem with { File = Path.Combine(root, problem.File) is var path && path.StartsWith("./", StringComparison.Ordinal) ? path[2..] : path })])
        {
            Content = files,
        };
    }

    /// <summary>The folder above the nearest one that has a content folder's name; null where none has.</summary>
    private static string? ContentRootOf(string path)
    {
        for (var folder = Directory.GetParent(Path.GetFullPath(path)); folder is not null; folder = folder.Parent)
            if (Folders.Contains(folder.Name)) return folder.Parent?.FullName;
        return null;
    }

    private static string ParentName(string path) => Directory.GetParent(Path.GetFullPath(path))?.Name ?? "";

    private static bool IsContent(string folder) => Folders.Any(name => Directory.Exists(Path.Combine(folder, name)));

    private static bool IsYaml(string name) => Path.GetExtension(name) is ".yaml" or ".yml" or ".json";
}

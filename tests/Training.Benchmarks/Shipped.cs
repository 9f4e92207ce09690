namespace Training.Benchmarks;

/// <summary>What the project ships.</summary>
internal static class Shipped
{
    /// <summary>The content folder, above the program.</summary>
    public static string Content()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (Directory.Exists(Path.Combine(folder.FullName, "content", "procedures"))) return Path.Combine(folder.FullName, "content");
        throw new DirectoryNotFoundException("There is no content folder above the program.");
    }
}

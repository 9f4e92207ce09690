namespace Training.Proofs.Tests;

/// <summary>
/// Test data that belongs to others (W3C, RFC 8785's reference tests) and is therefore not part of this repository.
/// It is looked for in a folder <c>shared/reference</c> above; a test that needs it is skipped where it is missing.
/// </summary>
internal static class SharedReference
{
    public static string File(string path)
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string file = Path.Combine(folder.FullName, "shared", "reference", path);
            if (System.IO.File.Exists(file))
                return file;
        }
        Assert.Skip($"shared/reference/{path} is not there: it belongs to others and is not part of this repository.");
        throw new InvalidOperationException("Skipped.");
    }

    public static byte[] Bytes(string path) => System.IO.File.ReadAllBytes(File(path));

    public static string Text(string path) => System.IO.File.ReadAllText(File(path)).TrimEnd('\n');
}

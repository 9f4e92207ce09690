namespace Training.Content.Tests;

/// <summary>The content that the tests read: a small folder without a fault, and what becomes of it by one edit.</summary>
internal static class ContentFolders
{
    public static string Data { get; } = Path.Combine(AppContext.BaseDirectory, "Data");

    public static IReadOnlyList<ContentFile> Good { get; } = ContentFolder.Read(Path.Combine(Data, "good"));

    /// <summary>The good folder with one file put in the place of the one at the path, if there is one.</summary>
    public static IReadOnlyList<ContentFile> With(string path, string text) =>
        [.. Good.Where(file => file.Path != path), new(path, text)];

    public static ContentFile File(string path) => Good.Single(file => file.Path == path);
}

namespace Training.Web.Startup;

/// <summary>Where the parts of an installation lie on disk.</summary>
/// <param name="Root">The folder that holds <c>wwwroot</c> and <c>content</c>.</param>
/// <param name="Data">The folder of the database and of the keys that protect sign-ins.</param>
public sealed record House(string Root, string Data)
{
    /// <summary>The content that trainers write.</summary>
    public string Content => Path.Combine(Root, "content");

    /// <summary>The database.</summary>
    public string Database => Path.Combine(Data, "training.db");

    /// <summary>The keys that protect sign-ins and forms.</summary>
    public string Keys => Path.Combine(Data, "keys");

    /// <summary>The key that proofs are signed with.</summary>
    public string SigningKey => Path.Combine(Data, "signing.key");

    /// <summary>The first folder at or above a place that holds both <c>wwwroot</c> and <c>content</c>.</summary>
    /// <param name="place">Where to start.</param>
    /// <exception cref="DirectoryNotFoundException">There is none: the installation is not whole.</exception>
    public static string FindRoot(string place)
    {
        for (var folder = new DirectoryInfo(place); folder is not null; folder = folder.Parent)
        {
            if (Directory.Exists(Path.Combine(folder.FullName, "wwwroot"))
                && Directory.Exists(Path.Combine(folder.FullName, "content"))
                && !File.Exists(Path.Combine(folder.FullName, "Training.Web.csproj"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException($"No folder above {place} holds both wwwroot and content.");
    }
}

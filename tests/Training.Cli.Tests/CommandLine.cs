namespace Training.Cli.Tests;

/// <summary>Runs the command line within the test's own process, and a folder of its own that goes with the test.</summary>
public abstract class CommandLine : IDisposable
{
    protected string Folder { get; } = Directory.CreateTempSubdirectory("training-cli-").FullName;

    protected static string Data { get; } = Path.Combine(AppContext.BaseDirectory, "Data");

    protected sealed record Outcome(int Code, string Output, string Errors)
    {
        public string[] Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    protected static Outcome Run(params string[] words) => RunWith("", words);

    protected static Outcome RunWith(string input, params string[] words)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        var code = Cli.Run(words, new StringReader(input), output, errors);
        return new(code, output.ToString(), errors.ToString());
    }

    protected string Write(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose()
    {
        Directory.Delete(Folder, recursive: true);
        GC.SuppressFinalize(this);
    }
}

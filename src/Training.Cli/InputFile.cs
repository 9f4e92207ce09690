using System.Text;
using Training.Content;
using Training.Sequencing;

namespace Training.Cli;

/// <summary>
/// Files that are named on the command line, or standard input under its name; one that cannot be read is a problem with a
/// place, not an exception.
/// </summary>
internal static class InputFile
{
    /// <summary>How standard input is named; its problems stand under that name, too.</summary>
    public const string Dash = ContentFile.Nameless;

    /// <summary>Whether a word is an option; standard input's name is none.</summary>
    public static bool IsOption(string word) => word.StartsWith('-') && word != Dash;

    /// <summary>Reads content from a file or from standard input, or says why it cannot be read.</summary>
    public static Outcome<ContentFile, ContentProblem> Content(string path, TextReader input) =>
        path == Dash ? new ContentFile(path, Text(input)) : Try(path, () => ContentFolder.ReadFile(path, path));

    /// <summary>Does something with a reader of a file or of standard input, or says why it cannot be read.</summary>
    public static Outcome<int, ContentProblem> Read(string path, TextReader input, Func<TextReader, int> read)
    {
        if (path == Dash) return read(input);
        var file = Try(path, () => new StreamReader(path, Encoding.UTF8));
        if (!file.IsOk) return file.Fault;
        using (file.Value) return read(file.Value);
    }

    // Cut just behind the largest size, as a file is, so that whoever reads the text can say that it is too large.
    private static string Text(TextReader input)
    {
        var signs = new char[ContentFile.LargestSize + 8];
        var length = input.ReadBlock(signs, 0, signs.Length);
        return new string(signs, 0, length).TrimStart('\uFEFF');
    }

    /// <summary>Does something with a file, or says why it cannot be read.</summary>
    public static Outcome<T, ContentProblem> Try<T>(string path, Func<T> read)
    {
        try
        {
            if (Directory.Exists(path)) return Problem(path, "This is a folder: name a file.");
            return File.Exists(path) ? read() : Problem(path, "There is no such file.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Problem(path, "The file cannot be read: see that it is there, and that you may read it.");
        }
    }

    public static ContentProblem Problem(string path, string sentence) => new(path, 1, 1, ProblemLevel.Error, sentence);
}

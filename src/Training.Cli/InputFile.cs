using Training.Content;
using Training.Sequencing;

namespace Training.Cli;

/// <summary>Files that are named on the command line; one that cannot be read is a problem with a place, not an exception.</summary>
internal static class InputFile
{
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

using System.Globalization;
using Training.Content;
using Training.Sequencing;

namespace Training.Cli.Checking;

/// <summary>Checks content files and folders, and says everything that an author must mend.</summary>
internal sealed record CheckCommand(IReadOnlyList<string> Paths)
{
    public static Outcome<CheckCommand, UsageFault> Parse(IReadOnlyList<string> words)
    {
        if (words.FirstOrDefault(word => word.StartsWith('-')) is { } option) return new UsageFault($"check has no option \"{option}\".");
        return words.Count == 0 ? new UsageFault("Name the files or folders to check.") : new CheckCommand(words);
    }

    public int Run(TextWriter output, TextWriter errors)
    {
        var files = 0;
        List<ContentProblem> problems = [];
        foreach (var path in Paths)
        {
            var target = CheckTarget.At(path);
            files += target.Files;
            problems.AddRange(target.Problems);
        }

        foreach (var problem in problems.Distinct()) errors.WriteLine(problem);
        var faults = problems.Count(problem => problem.HoldsBack);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Counted(files, "file")} checked, {Counted(faults, "error")}."));
        return faults == 0 ? ExitCode.Done : ExitCode.AtFault;
    }

    private static string Counted(int number, string word) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {word}{(number == 1 ? "" : "s")}");
}

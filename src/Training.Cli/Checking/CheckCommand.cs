using System.Globalization;
using Training.Content;
using Training.Sequencing;

namespace Training.Cli.Checking;

/// <summary>Checks content files and folders, and says everything that an author must mend.</summary>
internal sealed record CheckCommand(IReadOnlyList<string> Paths, bool Measure, IReadOnlyList<string> Languages)
{
    public static Outcome<CheckCommand, UsageFault> Parse(IReadOnlyList<string> words)
    {
        List<string> paths = [];
        var (measure, languages) = (false, Array.Empty<string>());
        for (var i = 0; i < words.Count; i++)
        {
            if (words[i] == "--measure") measure = true;
            else if (words[i] == "--languages" && i + 1 < words.Count) languages = words[++i].Split(',', StringSplitOptions.RemoveEmptyEntries);
            else if (words[i] == "--languages") return new UsageFault("Name the languages behind --languages, such as es,hi.");
            else if (InputFile.IsOption(words[i])) return new UsageFault($"check has no option \"{words[i]}\".");
            else paths.Add(words[i]);
        }

        if (paths.Count(path => path == InputFile.Dash) > 1) return new UsageFault("Standard input can be read once: name \"-\" once.");
        return paths.Count == 0 ? new UsageFault("Name the files or folders to check.") : new CheckCommand(paths, measure, languages);
    }

    public int Run(TextReader input, TextWriter output, TextWriter errors)
    {
        var files = 0;
        List<ContentProblem> problems = [];
        foreach (var path in Paths)
        {
            var target = CheckTarget.At(path, input);
            files += target.Files;
            problems.AddRange(target.Problems);
            if (target.Content is not { } content) continue;
            if (Measure) Measures.Write(content, output);
            foreach (var language in Languages) Gaps.Write(content, language, output);
        }

        foreach (var problem in problems.Distinct()) errors.WriteLine(problem);
        var faults = problems.Count(problem => problem.HoldsBack);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Counted(files, "file")} checked, {Counted(faults, "error")}."));
        return faults == 0 ? ExitCode.Done : ExitCode.AtFault;
    }

    private static string Counted(int number, string word) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {word}{(number == 1 ? "" : "s")}");
}

using Training.Content;
using Training.Content.Procedures;
using Training.Sequencing;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;

namespace Training.Cli.Analysing;

/// <summary>Analyses a procedure's file for its author.</summary>
internal sealed record AnalyseCommand(string Procedure, VariantId? Variant)
{
    public static Outcome<AnalyseCommand, UsageFault> Parse(IReadOnlyList<string> words)
    {
        string? procedure = null;
        VariantId? variant = null;
        for (var i = 0; i < words.Count; i++)
        {
            var word = words[i];
            if (word == "--variant")
            {
                if (++i == words.Count) return new UsageFault("--variant needs a value behind it.");
                if (variant is not null) return new UsageFault("--variant is there twice.");
                variant = new(words[i]);
            }
            else if (InputFile.IsOption(word)) return new UsageFault($"There is no option \"{word}\".");
            else if (procedure is not null) return new UsageFault($"analyse takes one procedure; \"{word}\" is one too many.");
            else procedure = word;
        }

        return procedure is null ? new UsageFault("Name the procedure's file.") : new AnalyseCommand(procedure, variant);
    }

    public int Run(TextReader input, TextWriter output, TextWriter errors)
    {
        var file = InputFile.Content(Procedure, input);
        if (!file.IsOk) return Report([file.Fault], errors);
        var reading = ProcedureFile.Analyse(file.Value, Variant, Beside);
        if (reading.Report is not { } report) return Report(reading.Problems, errors);
        output.WriteLine(AnalysisJson.Write(report, reading.Problems.Select(problem => problem.ToString())));
        var faults = reading.Problems.Where(problem => problem.HoldsBack).ToList();
        return faults.Count == 0 ? ExitCode.Done : Report(faults, errors);
    }

    private ContentFile? Beside(ProcedureId id)
    {
        var name = id.Value + ".yaml";
        // The id stands in a file that anybody may have written: it names a neighbour, never a way out of the folder.
        if (Path.GetFileName(name) != name) return null;
        var path = Path.Combine(Path.GetDirectoryName(Procedure) ?? "", name);
        var file = InputFile.Try(path, () => ContentFolder.ReadFile(path, path));
        return file.IsOk ? file.Value : null;
    }

    private static int Report(IEnumerable<ContentProblem> problems, TextWriter errors)
    {
        foreach (var problem in problems) errors.WriteLine(problem);
        return ExitCode.AtFault;
    }
}

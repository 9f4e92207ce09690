using System.Globalization;
using Training.Content;
using Training.Content.Modules;
using Training.Content.Packing;
using Training.Sequencing;

namespace Training.Cli.Packing;

/// <summary>Packs modules of a content folder with everything that they need.</summary>
internal sealed record PackCommand(string Folder, IReadOnlyList<string> Modules, string Out, string MadeBy, string Licence)
{
    public static Outcome<PackCommand, UsageFault> Parse(IReadOnlyList<string> words)
    {
        string? folder = null;
        List<string> modules = [];
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        for (var i = 0; i < words.Count; i++)
        {
            var word = words[i];
            if (word is "--module" or "--out" or "--by" or "--licence")
            {
                if (++i == words.Count) return new UsageFault($"{word} needs a value behind it.");
                if (word == "--module") modules.Add(words[i]);
                else if (!options.TryAdd(word, words[i])) return new UsageFault($"{word} is there twice.");
            }
            else if (word.StartsWith('-')) return new UsageFault($"pack has no option \"{word}\".");
            else if (folder is not null) return new UsageFault($"pack takes one folder; \"{word}\" is one too many.");
            else folder = word;
        }

        if (folder is null) return new UsageFault("Name the content folder.");
        if (modules.Count == 0) return new UsageFault("Name at least one --module.");
        if (!options.TryGetValue("--out", out var file)) return new UsageFault("Name the file to write with --out.");
        return new PackCommand(
            folder, modules, file, options.GetValueOrDefault("--by", "not told"), options.GetValueOrDefault("--licence", "not told: ask who made it"));
    }

    public int Run(TextWriter output, TextWriter errors)
    {
        try
        {
            return Write(output, errors);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            errors.WriteLine(InputFile.Problem(Folder, $"The folder cannot be read, or \"{Out}\" cannot be written: see that both are there and that you may."));
            return ExitCode.AtFault;
        }
    }

    private int Write(TextWriter output, TextWriter errors)
    {
        var root = Directory.Exists(Path.Combine(Folder, "content")) ? Path.Combine(Folder, "content") : Folder;
        var reading = ContentReader.Read(ContentFolder.Read(root));
        foreach (var problem in reading.Problems.Where(problem => problem.HoldsBack))
            errors.WriteLine(problem with { File = Path.Combine(root, problem.File) });
        if (!reading.IsFit) return ExitCode.AtFault;
        var files = PackChoice.Of(reading.Library!, [.. Modules.Select(module => new ModuleId(module))]);
        if (!files.IsOk)
        {
            errors.WriteLine(InputFile.Problem(root, files.Fault.Sentence));
            return ExitCode.AtFault;
        }

        var pack = Pack.Of(files.Value, MadeBy, Licence, Modules);
        var bytes = pack.Write();
        var unfinished = Out + ".part";
        File.WriteAllBytes(unfinished, bytes);
        File.Move(unfinished, Out, overwrite: true);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Out}: {pack.Files.Count} files, {bytes.Length} bytes."));
        return ExitCode.Done;
    }
}

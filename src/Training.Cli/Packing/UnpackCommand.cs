using System.Globalization;
using Training.Content;
using Training.Content.Packing;
using Training.Sequencing;

namespace Training.Cli.Packing;

/// <summary>Checks a pack and, where a folder is named, writes its files there once all of them have passed.</summary>
internal sealed record UnpackCommand(string File, string? Out)
{
    public static Outcome<UnpackCommand, UsageFault> Parse(IReadOnlyList<string> words) => words switch
    {
        [var file, "--check"] when !file.StartsWith('-') => new UnpackCommand(file, null),
        ["--check", var file] when !file.StartsWith('-') => new UnpackCommand(file, null),
        [var file, "--out", var folder] when !file.StartsWith('-') => new UnpackCommand(file, folder),
        ["--out", var folder, var file] when !file.StartsWith('-') => new UnpackCommand(file, folder),
        _ => new UsageFault("Name the pack, and either --check or a folder with --out."),
    };

    public int Run(TextWriter output, TextWriter errors)
    {
        var read = InputFile.Try(File, () => Pack.Read(Bytes()));
        if (!read.IsOk) return AtFault(errors, read.Fault);
        if (!read.Value.IsOk) return AtFault(errors, InputFile.Problem(File, read.Value.Fault.Sentence));
        var pack = read.Value.Value;
        var problems = ContentReader.Read(pack.Files).Problems;
        foreach (var problem in problems) errors.WriteLine(problem);
        var faults = problems.Count(problem => problem.HoldsBack);
        output.WriteLine($"made by: {pack.Note.MadeBy}");
        output.WriteLine($"licence: {pack.Note.Licence}");
        output.WriteLine($"modules: {string.Join(", ", pack.Note.Modules)}");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{pack.Files.Count} files checked, {faults} errors."));
        if (faults > 0) return ExitCode.AtFault;
        return Out is null ? ExitCode.Done : Write(pack, Out, errors);
    }

    private static int Write(Pack pack, string folder, TextWriter errors)
    {
        try
        {
            if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
                return AtFault(errors, InputFile.Problem(folder, "The folder is not empty: name a new one, so that nothing is overwritten."));
            foreach (var file in pack.Files)
            {
                var path = Path.Combine(folder, file.Path.Replace('/', Path.DirectorySeparatorChar));
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                System.IO.File.WriteAllText(path, file.Text);
            }

            return ExitCode.Done;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return AtFault(errors, InputFile.Problem(folder, "The folder cannot be written: see that you may write there."));
        }
    }

    // One byte more than a pack may have is enough to know that it has too many.
    private byte[] Bytes()
    {
        using var stream = System.IO.File.OpenRead(File);
        var bytes = new byte[Math.Min(stream.CanSeek ? stream.Length : Pack.LargestSize, Pack.LargestSize) + 1];
        return bytes[..stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)];
    }

    private static int AtFault(TextWriter errors, ContentProblem problem)
    {
        errors.WriteLine(problem);
        return ExitCode.AtFault;
    }
}

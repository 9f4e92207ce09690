using System.Globalization;
using Training.Sequencing;

namespace Training.Cli.Verifying;

/// <summary>Checks a proof pack or a single credential, or walks through an export of the log, without a network.</summary>
internal sealed record VerifyCommand(string File, bool IsLog)
{
    private static readonly string[] Options = ["--key", "--status", "--checkpoint", "--extension", "--name", "--on"];

    /// <summary>The keys that are trusted: a did.json file, or a key as it is written in one.</summary>
    public string? Key { get; private init; }

    /// <summary>Status lists that were fetched elsewhere.</summary>
    public IReadOnlyList<string> Status { get; private init; } = [];

    /// <summary>A checkpoint that was got elsewhere.</summary>
    public string? Checkpoint { get; private init; }

    /// <summary>What shows that the log of the proof is the beginning of that checkpoint's.</summary>
    public string? Extension { get; private init; }

    /// <summary>Whose the credential should be.</summary>
    public string? Name { get; private init; }

    /// <summary>The day asked about, by the calendar of the record's shop; today where nothing is said.</summary>
    public DateOnly? On { get; private init; }

    public static Outcome<VerifyCommand, UsageFault> Parse(IReadOnlyList<string> words)
    {
        string? file = null;
        var isLog = false;
        List<string> status = [];
        Dictionary<string, string> options = new(StringComparer.Ordinal);
        for (var i = 0; i < words.Count; i++)
        {
            var word = words[i];
            if (word == "--log" && !isLog) isLog = true;
            else if (Options.Contains(word))
            {
                if (++i == words.Count) return new UsageFault($"{word} needs a value behind it.");
                if (word == "--status") status.Add(words[i]);
                else if (!options.TryAdd(word, words[i])) return new UsageFault($"{word} is there twice.");
            }
            else if (InputFile.IsOption(word)) return new UsageFault($"verify has no option \"{word}\".");
            else if (file is not null) return new UsageFault($"verify takes one file; \"{word}\" is one too many.");
            else file = word;
        }

        if (file is null) return new UsageFault(isLog ? "Name the export of a log." : "Name the proof pack or the credential.");
        if (isLog && (status.Count > 0 || options.Keys.Any(option => option is "--name" or "--on" or "--extension")))
            return new UsageFault("With --log there is nothing but --key and --checkpoint.");
        if (options.ContainsKey("--extension") && !options.ContainsKey("--checkpoint"))
            return new UsageFault("--extension leads to a checkpoint: name that with --checkpoint.");
        if (options.Values.Concat(status).Append(file).Count(name => name == InputFile.Dash) > 1)
            return new UsageFault("Only one of the files can be standard input.");
        DateOnly? on = null;
        if (options.TryGetValue("--on", out var day))
        {
            if (!DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var read))
                return new UsageFault($"\"{day}\" is no day: write one such as 2026-03-14.");
            on = read;
        }

        return new VerifyCommand(file, isLog)
        {
            Key = options.GetValueOrDefault("--key"),
            Status = status,
            Checkpoint = options.GetValueOrDefault("--checkpoint"),
            Extension = options.GetValueOrDefault("--extension"),
            Name = options.GetValueOrDefault("--name"),
            On = on,
        };
    }

    public int Run(TextReader standardInput, TextWriter output, TextWriter errors, DateTimeOffset now)
    {
        var input = VerifyInput.Read(this, standardInput);
        if (!input.IsOk)
        {
            errors.WriteLine(input.Fault);
            return ExitCode.AtFault;
        }

        var isProved = IsLog ? LogVerification.Tell(input.Value, output, now) : CredentialVerification.Tell(this, input.Value, output, now);
        return isProved ? ExitCode.Done : ExitCode.AtFault;
    }
}

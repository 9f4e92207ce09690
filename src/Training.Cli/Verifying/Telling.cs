using Training.Proofs.Credentials;

namespace Training.Cli.Verifying;

/// <summary>Tells how each check came out, a line each, and remembers what the last line has to say.</summary>
internal sealed class Telling(TextWriter output)
{
    private string about = "";
    private string? firstNo;
    private string? firstGap;

    /// <summary>Whether everything that was told passed.</summary>
    public bool AllPassed => firstNo is null && firstGap is null;

    /// <summary>What is wrong, first of what failed and then of what could not be checked; null where everything passed.</summary>
    public string? First => firstNo ?? firstGap;

    /// <summary>Says what the lines that follow are about.</summary>
    public void Begin(string heading)
    {
        about = heading;
        output.WriteLine(heading);
    }

    /// <summary>A check and how it came out.</summary>
    public void Line(CheckState state, string subject, string sentence)
    {
        var word = state switch { CheckState.Passed => "yes", CheckState.Failed => "no", _ => "not checked" };
        output.WriteLine($"  {word,-12}{subject,-11}{sentence}");
        if (state == CheckState.Failed) firstNo ??= $"{about}: {sentence}";
        if (state == CheckState.NotChecked) firstGap ??= $"{about}: {sentence}";
    }

    /// <summary>Something to know beside.</summary>
    public void Note(string sentence) => output.WriteLine($"              {sentence}");

    /// <summary>Ends the lines about one thing.</summary>
    public void End() => output.WriteLine();
}

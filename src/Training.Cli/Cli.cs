using Training.Cli.Analysing;
using Training.Cli.Checking;
using Training.Cli.Grading;
using Training.Cli.Packing;
using Training.Cli.Verifying;

namespace Training.Cli;

/// <summary>The command line: one command a run, results on standard output, problems on standard error.</summary>
public static class Cli
{
    private const string Usage =
        """
        Usage:
          training check PATH… [--measure] [--languages es,hi]
              Checks content: a folder that is or holds content/, or single files. Problems go to standard error,
              one a line, as file:line:column: error: sentence. With --measure, how much there is to read in each
              lesson of a content folder; with --languages, what of it is missing or out of step in those languages.

          training grade PROCEDURE.yaml --answer ANSWER.json [--variant V]
              Grades one answer and prints its verdict as JSON. ANSWER.json is a list of entries,
              [{"step":"rest","seconds":60}, …], or {"start":[ids],"entries":[…]}.

          training grade PROCEDURE.yaml --answers FILE.jsonl [--variant V]
              Grades one answer a line and prints one verdict a line; an answer that is refused gives
              {"error":"sentence"} on its line. Lines with nothing on them are passed over.

          training analyse PROCEDURE.yaml [--variant V]
              Counts the right orders of a procedure and prints what its author should know as JSON: how many right
              orders there are and the chance to guess one, rules that others imply, the least time, and problems.
              A listing that is not a right order, or a gap that nothing can fill, is an error and is counted all the
              same; where such a gap leaves no least time, it is null. A procedure that it undoes is looked for beside it.

          training pack CONTENT --module ID… --out FILE [--by NAME] [--licence LINE]
              Packs modules with everything that they need, to be taken elsewhere: --module stands before each.

          training unpack FILE --check
          training unpack FILE --out FOLDER
              Checks a pack, or writes its files into a new folder once all of them have passed.

          training verify FILE [--key KEY] [--status FILE]… [--checkpoint FILE [--extension FILE]] [--name NAME] [--on DAY]
              Checks a proof that a shop handed over, without a network: signature, status, dates, place in the log.
              FILE is a proof pack or one credential. KEY is the issuer's did.json, or a key as it stands there
              (z6Mk…); without it nothing says whose the keys are. DAY, such as 2026-03-14, is the day asked about,
              by the calendar of the shop. A checkpoint that is newer than the proof needs the extension that leads
              to it, from /log/extension of the issuer's address.

          training verify --log FILE [--key KEY] [--checkpoint FILE]
              Walks through an export of the log and names the first entry that does not fit.

          For check, grade, analyse and verify a file named "-" is standard input: a procedure or the answers to one, a
          proof or an export. An answer is at most 4,000,000 characters long. Without --variant the first kind of vehicle
          is taken.

        Exit codes: 0 done or proved, 1 the content or an answer is at fault or something is not proved, 2 wrong usage.
        """;

    /// <summary>Runs one command.</summary>
    /// <param name="args">The words behind the program's name.</param>
    /// <param name="input">Standard input.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="errors">Standard error.</param>
    /// <param name="clock">Tells what time it is; null for the machine's clock.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(string[] args, TextReader input, TextWriter output, TextWriter errors, TimeProvider? clock = null)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        try
        {
            var code = RunCommand(args, input, output, errors, clock ?? TimeProvider.System);
            output.Flush();
            errors.Flush();
            return code;
        }
        catch (IOException)
        {
            // Nobody reads on (the other end of a pipe is closed, or the disk is full): there is nobody to tell.
            return ExitCode.AtFault;
        }
    }

    private static int RunCommand(string[] args, TextReader input, TextWriter output, TextWriter errors, TimeProvider clock)
    {
        switch (args)
        {
            case ["--help" or "-h" or "help", ..]:
            case ["check" or "grade" or "analyse" or "pack" or "unpack" or "verify", .. var options] when options.Any(word => word is "--help" or "-h"):
                output.WriteLine(Usage);
                return ExitCode.Done;
            case ["check", .. var rest]:
                return CheckCommand.Parse(rest).Match(command => command.Run(input, output, errors), Wrong);
            case ["grade", .. var rest]:
                return GradeCommand.Parse(rest).Match(command => command.Run(input, output, errors), Wrong);
            case ["analyse", .. var rest]:
                return AnalyseCommand.Parse(rest).Match(command => command.Run(input, output, errors), Wrong);
            case ["pack", .. var rest]:
                return PackCommand.Parse(rest).Match(command => command.Run(output, errors), Wrong);
            case ["unpack", .. var rest]:
                return UnpackCommand.Parse(rest).Match(command => command.Run(output, errors), Wrong);
            case ["verify", .. var rest]:
                return VerifyCommand.Parse(rest).Match(command => command.Run(input, output, errors, clock.GetUtcNow()), Wrong);
            case []:
                return Wrong(new("Name a command."));
            default:
                return Wrong(new($"There is no command \"{args[0]}\"."));
        }

        int Wrong(UsageFault fault)
        {
            errors.WriteLine(fault.Sentence);
            errors.WriteLine();
            errors.WriteLine(Usage);
            return ExitCode.WrongUsage;
        }
    }
}

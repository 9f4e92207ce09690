using Training.Cli.Analysing;
using Training.Cli.Checking;
using Training.Cli.Grading;

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
              orders there are and the chance to guess one, rules that others imply, the least time, and remarks.
              A procedure that it undoes is looked for beside it.

          A file named "-" is standard input. Without --variant the first kind of vehicle is taken.

        Exit codes: 0 done, 1 the content or an answer is at fault, 2 wrong usage.
        """;

    /// <summary>Runs one command.</summary>
    /// <param name="args">The words behind the program's name.</param>
    /// <param name="input">Standard input.</param>
    /// <param name="output">Standard output.</param>
    /// <param name="errors">Standard error.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static int Run(string[] args, TextReader input, TextWriter output, TextWriter errors)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(errors);
        try
        {
            var code = RunCommand(args, input, output, errors);
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

    private static int RunCommand(string[] args, TextReader input, TextWriter output, TextWriter errors)
    {
        switch (args)
        {
            case ["check", .. var rest]:
                return CheckCommand.Parse(rest).Match(command => command.Run(output, errors), Wrong);
            case ["grade", .. var rest]:
                return GradeCommand.Parse(rest).Match(command => command.Run(input, output, errors), Wrong);
            case ["analyse", .. var rest]:
                return AnalyseCommand.Parse(rest).Match(command => command.Run(output, errors), Wrong);
            case ["--help" or "-h" or "help", ..]:
                output.WriteLine(Usage);
                return ExitCode.Done;
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

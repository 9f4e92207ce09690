using System.Text;
using Microsoft.Win32.SafeHandles;
using Training.Cli;

var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var input = new StreamReader(Console.OpenStandardInput(), utf8);
// Not disposed of: Cli.Run flushes them, and where nobody reads on a second try would fail once more, where nobody catches it.
var output = new StreamWriter(StandardOutput(), utf8, bufferSize: 65_536) { NewLine = "\n" };
var errors = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n" };
return Cli.Run(args, input, output, errors);

// The console's own stream says nothing where the other end of a pipe is closed, and an endless input would be graded for ever.
// A FileStream says it, but writes at a place of its own where there are places: a file that others write to as well keeps the console's.
static Stream StandardOutput()
{
    if (OperatingSystem.IsWindows() || !Console.IsOutputRedirected) return Console.OpenStandardOutput();
    try
    {
        var pipe = new FileStream(new SafeFileHandle(1, ownsHandle: false), FileAccess.Write, bufferSize: 0);
        return pipe.CanSeek ? Console.OpenStandardOutput() : pipe;
    }
    catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
    {
        return Console.OpenStandardOutput();
    }
}

using System.Diagnostics;
using System.Text;

namespace Training.Cli.Tests;

public sealed class ProcessTests : CommandLine
{
    [Fact]
    public async Task The_program_writes_UTF_8_without_a_mark_and_gives_the_exit_code()
    {
        var answer = Write("a.json", """[{"step":"schlüssel"}]""");
        var start = new ProcessStartInfo("dotnet", [typeof(Cli).Assembly.Location, "grade", Path.Combine(Data, "good", "procedures", "change-relay-tray.yaml"), "--answer", answer])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.Latin1,
        };
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.AtFault, process.ExitCode);
        Assert.StartsWith("{\"error\":", output, StringComparison.Ordinal);
        Assert.Contains("schlüssel", Encoding.UTF8.GetString(Encoding.Latin1.GetBytes(output)), StringComparison.Ordinal);
        Assert.EndsWith("}\n", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_nobody_reads_from_the_pipe_any_more_an_endless_input_is_not_graded_for_ever()
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Cli).Assembly.Location, "grade", Path.Combine(Data, "good", "procedures", "change-relay-tray.yaml"), "--answers", "-"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        process.StandardOutput.Close();
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromMinutes(1));
        var ended = process.WaitForExitAsync(limit.Token);
        try
        {
            while (!ended.IsCompleted) await process.StandardInput.WriteLineAsync("""[{"step":"key-off"}]""");
        }
        catch (IOException)
        {
            // It has gone: that is what is waited for.
        }

        if (limit.IsCancellationRequested) process.Kill();
        await ended;
        Assert.Equal(ExitCode.AtFault, process.ExitCode);
    }
}

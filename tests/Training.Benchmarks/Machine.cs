using System.Globalization;
using System.Runtime.InteropServices;

namespace Training.Benchmarks;

/// <summary>Where the times were taken, and what else was going on there.</summary>
internal static class Machine
{
    public static string Load => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Trim() : "unknown";

    public static void Describe(TextWriter output)
    {
        output.WriteLine("# What the engine takes");
        output.WriteLine();
        output.WriteLine("Made by `dotnet run -c Release --project tests/Training.Benchmarks > tests/Training.Benchmarks/RESULTS.md`.");
        output.WriteLine();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{RuntimeInformation.FrameworkDescription}, {RuntimeInformation.OSDescription.Trim()}, {Processor()}, {Environment.ProcessorCount} cores. Load at the start (1, 5 and 15 min): {Load}."));
        output.WriteLine("Times are medians; where the load is above the number of cores, others were at work and the times are too long.");
    }

    private static string Processor() => !File.Exists("/proc/cpuinfo")
        ? RuntimeInformation.ProcessArchitecture.ToString()
        : File.ReadLines("/proc/cpuinfo").FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))
            ?.Split(':')[1].Trim() ?? RuntimeInformation.ProcessArchitecture.ToString();
}

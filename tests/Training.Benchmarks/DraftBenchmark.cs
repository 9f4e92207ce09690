using System.Globalization;
using System.Text;
using Training.Content;
using Training.Content.Writing;

namespace Training.Benchmarks;

/// <summary>What a trainer is told at each pause in typing: a procedure of 40 steps among all files of the content.</summary>
internal static class DraftBenchmark
{
    private const int Steps = 40;

    public static void Run(TextWriter output)
    {
        output.WriteLine($"## The check of a draft of {Steps} steps while it is written (wanted: under 200 ms)");
        output.WriteLine();
        var files = ContentFolder.Read(Shipped.Content());
        output.WriteLine("| draft | time | of which the processor worked |");
        output.WriteLine("| --- | --- | --- |");
        foreach (var (name, draft) in new[]
        {
            ("40 steps, 60 rules, sound", Draft(60, "")),
            ("the same with a circle and an idle rule", Draft(60, Rule("back", Steps - 1, 0) + Rule("idle", 0, Steps - 1))),
            ("40 steps, 20 rules: too many orders to count, estimated", Draft(20, "")),
            ("isolate-chassis", files.Single(file => file.Path == "procedures/isolate-chassis.yaml")),
        })
        {
            var (clock, processor) = Measure.Asked(5, 20, () =>
            {
                DraftCheck.Of(Surroundings.Of(files, draft), draft);
                return Task.CompletedTask;
            }).GetAwaiter().GetResult();
            output.WriteLine($"| {name} | {clock:0} ms | {processor:0} ms |");
        }
    }

    private static ContentFile Draft(int rules, string more)
    {
        var text = new StringBuilder("id: long-job\ntitle: A long job\nrevision: 1\nsteps:\n");
        for (var step = 0; step < Steps; step++) text.Append(CultureInfo.InvariantCulture, $"  - {{ id: step-{step}, do: Do the work number {step} }}\n");
        text.Append("rules:\n");
        for (var rule = 0; rule < rules; rule++)
        {
            var first = (rule * 17) % (Steps - 1);
            text.Append(Rule($"rule-{rule}", first, Math.Min(Steps - 1, first + 1 + ((rule * 7) % 9))));
        }

        return new("procedures/long-job.yaml", text.Append(more).ToString());
    }

    private static string Rule(string id, int first, int then) =>
        $"  - {{ id: {id}, first: [step-{first}], then: [step-{then}], because: It must be so, otherwise: It goes wrong, harm: people, severity: serious }}\n";
}

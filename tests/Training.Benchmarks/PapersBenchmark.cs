using Microsoft.Extensions.DependencyInjection;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Examining;
using Training.Records.Publishing;

namespace Training.Benchmarks;

/// <summary>How alike in difficulty the papers of the shipped competencies are, over a thousand seeds.</summary>
internal static class PapersBenchmark
{
    private const int Seeds = 1000;

    public static void Run(TextWriter output)
    {
        output.WriteLine($"## Difficulty of papers over {Seeds} seeds: the points of blind answers");
        output.WriteLine();
        output.WriteLine("| competency | questions | mean | standard deviation | lowest | highest | neighbours differ by (mean, most) | scenarios shared by neighbours (mean) |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        RecordsOnDisk.Use((services, _) => Look(output, services)).GetAwaiter().GetResult();
    }

    private static async Task Look(TextWriter output, ServiceProvider services)
    {
        await services.GetRequiredService<Publisher>().Publish(ContentFolder.Read(Shipped.Content()));
        var (library, draw) = (services.GetRequiredService<Library>().Current, services.GetRequiredService<PaperDraw>());
        foreach (var competency in library.Content.Competencies)
            output.WriteLine(await Row(library, draw, competency));
    }

    private static async Task<string> Row(PublishedLibrary library, PaperDraw draw, Competency competency)
    {
        var (points, differences, shared) = (new List<double>(), new List<double>(), new List<double>());
        var alone = new Dictionary<(QuestionKind, ScenarioId), int>();
        for (var seed = 1L; seed <= Seeds; seed++)
        {
            var first = await draw.Scenarios(library, competency.Paper, seed, alone);
            var second = await draw.Scenarios(library, competency.Paper, seed + Seeds, first.CountBy(asked => asked).ToDictionary());
            var (one, other) = (await draw.BlindPoints(library, first), await draw.BlindPoints(library, second));
            points.Add(one);
            differences.Add(Math.Abs(one - other));
            shared.Add(first.Intersect(second).Count());
        }

        var mean = points.Average();
        var deviation = Math.Sqrt(points.Average(each => (each - mean) * (each - mean)));
        return $"| {competency.Title} | {competency.Paper.Questions.Sum(line => line.Count)} | {mean:0.0} | {deviation:0.0} | {points.Min():0.0} | {points.Max():0.0} "
            + $"| {differences.Average():0.0}, {differences.Max():0.0} | {shared.Average():0.0} |";
    }
}

using Microsoft.Extensions.Caching.Memory;
using Training.Content;
using Training.Content.Scenarios;
using Training.Sequencing;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;

namespace Training.Records.Publishing;

/// <summary>
/// Graders of every procedure that was ever published, by the hash of its text: what was graded once can be graded again.
/// One for the whole process.
/// </summary>
public sealed class Graders : IDisposable
{
    private readonly Archive archive;
    private readonly MemoryCache graders = new(new MemoryCacheOptions { SizeLimit = 256 });

    private readonly MemoryCache orders = new(new MemoryCacheOptions { SizeLimit = 64 });

    internal Graders(Archive archive) => this.archive = archive;

    /// <summary>The grader of a published procedure on one kind of vehicle.</summary>
    /// <param name="procedure">The hash of the procedure's text.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <param name="absent">The steps that cannot be done in the scenario that is asked about; null where none is.</param>
    /// <exception cref="InvalidOperationException">No such text was published, or it cannot be graded by: a fault of ours.</exception>
    public async ValueTask<Grader> For(ContentHash procedure, VariantId? variant = null, IReadOnlyList<AbsentStep>? absent = null)
    {
        var key = (procedure, variant, ScenarioJobs.KeyOf(absent ?? []));
        if (graders.TryGetValue(key, out Grader? known)) return known!;
        var grader = Grader.For((await archive.Procedure(procedure)).Without(absent ?? []), variant).Match(
            made => made,
            faults => throw new InvalidOperationException($"{procedure} cannot be graded by: {faults.Problems[0].Sentence}"));
        return graders.Set(key, grader, new MemoryCacheEntryOptions { Size = 1 });
    }

    /// <summary>
    /// The right orders of a published procedure on one kind of vehicle, counted once: it is the dearest part of drawing
    /// a question.
    /// </summary>
    /// <param name="procedure">The hash of the procedure's text.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <param name="absent">The steps that cannot be done in the scenario that is asked about; null where none is.</param>
    /// <exception cref="InvalidOperationException">No such text was published, or it cannot be graded by: a fault of ours.</exception>
    public async ValueTask<RightOrderDraw> OrdersFor(ContentHash procedure, VariantId? variant = null, IReadOnlyList<AbsentStep>? absent = null)
    {
        var key = (procedure, variant, ScenarioJobs.KeyOf(absent ?? []));
        if (orders.TryGetValue(key, out RightOrderDraw? known)) return known!;
        var counted = RightOrderDraw.Of(await For(procedure, variant, absent));
        return orders.Set(key, counted, new MemoryCacheEntryOptions { Size = 1 });
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        graders.Dispose();
        orders.Dispose();
    }
}

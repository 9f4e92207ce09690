using Microsoft.Extensions.Caching.Memory;
using Training.Content;
using Training.Sequencing;
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

    internal Graders(Archive archive) => this.archive = archive;

    /// <summary>The grader of a published procedure on one kind of vehicle.</summary>
    /// <param name="procedure">The hash of the procedure's text.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <exception cref="InvalidOperationException">No such text was published, or it cannot be graded by: a fault of ours.</exception>
    public async ValueTask<Grader> For(ContentHash procedure, VariantId? variant = null)
    {
        if (graders.TryGetValue((procedure, variant), out Grader? known)) return known!;
        var grader = Grader.For(await archive.Procedure(procedure), variant).Match(
            made => made,
            faults => throw new InvalidOperationException($"{procedure} cannot be graded by: {faults.Problems[0].Sentence}"));
        return graders.Set((procedure, variant), grader, new MemoryCacheEntryOptions { Size = 1 });
    }

    /// <inheritdoc/>
    public void Dispose() => graders.Dispose();
}

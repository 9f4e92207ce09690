using Training.Content;
using Training.Sequencing;
using Training.Sequencing.Procedures;

namespace Training.Records.Publishing;

/// <summary>Graders of every procedure that was ever published, by the hash of its text: what was graded once can be graded again.</summary>
public sealed class Graders
{
    /// <summary>The grader of a published procedure on one kind of vehicle.</summary>
    /// <param name="procedure">The hash of the procedure's text.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <exception cref="InvalidOperationException">No such text was published: a fault of ours.</exception>
    public ValueTask<Grader> For(ContentHash procedure, VariantId? variant = null) => throw new NotImplementedException();
}

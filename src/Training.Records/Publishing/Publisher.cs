using NodaTime;
using Training.Content;
using Training.Records.Accounts;
using Training.Sequencing;

namespace Training.Records.Publishing;

/// <summary>
/// Publishes content. A folder with an error changes nothing: what was published before is served on, also after a
/// restart, and the trainer is told. One for the whole process.
/// </summary>
public sealed class Publisher
{
    /// <summary>Serves the newest publication of the database; what the host calls first.</summary>
    public Task Restore() => throw new NotImplementedException();

    /// <summary>
    /// Reads the files. Without an error their texts are kept for good by their hash, a new publication is made if
    /// anything differs from the last one, and it is served from now on.
    /// </summary>
    /// <param name="files">All files of the content folder.</param>
    /// <returns>What is served now and what stands in the way of the rest.</returns>
    public Task<PublishingState> Publish(IReadOnlyList<ContentFile> files) => throw new NotImplementedException();

    /// <summary>What is served and what is wrong with the newest state of the folder (trainers, administrators).</summary>
    /// <param name="actor">Who asks.</param>
    public Outcome<PublishingState, Refusal> State(Actor actor) => throw new NotImplementedException();
}

/// <summary>What is served, and what is wrong with the newest state of the content folder.</summary>
/// <param name="Served">The number of the publication that is served; 0 for none.</param>
/// <param name="ServedSince">When it was published; null for none.</param>
/// <param name="ReadAt">When the folder was last read; null since the start.</param>
/// <param name="Problems">All problems of that reading, remarks too.</param>
public sealed record PublishingState(int Served, Instant? ServedSince, Instant? ReadAt, IReadOnlyList<ContentProblem> Problems)
{
    /// <summary>Whether the newest state of the folder could not be published.</summary>
    public bool IsHeldBack => Problems.Any(problem => problem.Level == ProblemLevel.Error);
}

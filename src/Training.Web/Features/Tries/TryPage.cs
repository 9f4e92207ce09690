using Training.Content.Modules;
using Training.Records.Practising;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Tries;

/// <summary>A practice try with what is said of it.</summary>
/// <param name="Try">The try.</param>
public sealed record TryPage(PracticeResult Try)
{
    /// <summary>The module that teaches the job; null where none does any more.</summary>
    public Module? Lesson { get; init; }

    /// <summary>What to practise next; null where everything is right.</summary>
    public PractisedQuestion? Next { get; init; }
}

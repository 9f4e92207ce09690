using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Findings;

/// <summary>Puts a finding into sentences for the technician.</summary>
internal static class Sentences
{
    /// <summary>What a rule's author wrote stands between what happened and what to do instead.</summary>
    public static FindingTelling Tell(Sentence happened, Rule rule, Sentence instead) =>
        new(happened, null, instead) { Because = rule.Because, Otherwise = rule.Otherwise };

    /// <summary>Where something stands, in words.</summary>
    public static Sentence Place(int place) => place < 0 ? "done before you began" : At(place);

    /// <summary>Several sentences as one, from the left.</summary>
    public static Sentence And(IEnumerable<Sentence> sentences) => sentences.Aggregate(Both);

    private static Sentence At(int place) => $"place {place + 1}";

    private static Sentence Both(Sentence first, Sentence second) => $"{first} and {second}";
}

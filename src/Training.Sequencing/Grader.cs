using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing;

/// <summary>Grades answers to one procedure on one kind of vehicle. Safe to share between threads.</summary>
public sealed class Grader
{
    private Grader(Procedure procedure, VariantId? variant) => (Procedure, Variant) = (procedure, variant);

    /// <summary>The procedure that is graded by.</summary>
    public Procedure Procedure { get; }

    /// <summary>The kind of vehicle; null where the procedure tells none apart.</summary>
    public VariantId? Variant { get; }

    /// <summary>Makes a grader, or says what the author must mend first.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static Outcome<Grader, AuthoringFaults> For(Procedure procedure, VariantId? variant = null) =>
        throw new NotImplementedException();

    /// <summary>Grades an answer, or refuses it whole with a sentence.</summary>
    /// <param name="answer">The answer.</param>
    public Outcome<Verdict, Refusal> Grade(Answer answer) => throw new NotImplementedException();
}

using Training.Records.Proving;

namespace Training.Web.Features.ShownProofs;

/// <summary>What a customer sees.</summary>
/// <param name="Proof">What the proof shows.</param>
/// <param name="Token">The secret of the link, to look again.</param>
/// <param name="Wrong">What is wrong with the day that was asked for, if anything.</param>
public sealed record ShownProofPage(ShownProof.Shown Proof, string Token, string? Wrong)
{
    /// <summary>How many of the records do not hold.</summary>
    public int Failing => Proof.Records.Count(record => !record.Holds);
}

using Training.Proofs.Log;
using static Training.Proofs.Credentials.CredentialVerifier;

namespace Training.Proofs.Credentials;

/// <summary>Holds the place in the log that a credential tells against a checkpoint of the log.</summary>
internal static class LogCheck
{
    public static CheckResult Of(CompetencyCredential credential, VerificationRequest request, ShopCalendar calendar)
    {
        if (credential.Log is not { } place)
            return NotChecked(Check.Log, CheckReason.NoLogPlace, "The credential does not say where it stands in the log.");
        if (!place.SpeaksOf(credential.Id))
            return Failed(Check.Log, CheckReason.EntryOfAnother, "The entry in the log speaks of another record.");
        // The credential's own is signed as well, but one that was got elsewhere shows a log that others have seen.
        if ((request.Checkpoint ?? place.Checkpoint) is not { } signed)
            return NotChecked(Check.Log, CheckReason.NoCheckpoint, "No checkpoint of the log is at hand.");
        Outcome<Checkpoint> believed = signed.Verify(request.Keys, request.Now);
        if (!believed.IsOk)
            return NotChecked(Check.Log, CheckReason.CheckpointNotBelieved, believed.Sentence);
        if (signed.Key.Controller != credential.Issuer.Id.ToString() || believed.Value.Origin != place.Origin)
            return NotChecked(Check.Log, CheckReason.CheckpointNotBelieved, "The checkpoint is of another log than the credential's.");
        return HoldAgainst(place, believed.Value, request.Consistency, calendar);
    }

    /// <summary>Holds a place against a checkpoint that is believed.</summary>
    public static CheckResult HoldAgainst(LogInclusion place, Checkpoint checkpoint, ConsistencyProof? consistency, ShopCalendar calendar)
    {
        if (place.Proof.RootFrom(place.Entry.LeafHash) is not { } root)
            return Failed(Check.Log, CheckReason.NotInLog, "The proof of the place in the log is not whole.");
        long size = place.Proof.TreeSize;
        if (size == checkpoint.Size)
        {
            return root == checkpoint.RootHash
                ? InLog(place, checkpoint, calendar)
                : Failed(Check.Log, CheckReason.NotInLog, $"The log of {calendar.Day(checkpoint.Time)} does not have this entry at place {place.Proof.LeafIndex}.");
        }
        if (consistency is null || consistency.FirstSize != size || consistency.SecondSize != checkpoint.Size)
            return NotChecked(Check.Log, CheckReason.NoCheckpoint, $"The credential's proof is for the log at {size} entries, the checkpoint for {checkpoint.Size}; no proof that joins them is at hand.");
        return consistency.Verify(root, checkpoint.RootHash)
            ? InLog(place, checkpoint, calendar)
            : Failed(Check.Log, CheckReason.LogRewritten, $"The log of {calendar.Day(checkpoint.Time)} is not the credential's log with entries added.");
    }

    private static CheckResult InLog(LogInclusion place, Checkpoint checkpoint, ShopCalendar calendar) =>
        Passed(Check.Log, $"It is entry {place.Proof.LeafIndex} of the log of {calendar.Day(checkpoint.Time)}.");
}

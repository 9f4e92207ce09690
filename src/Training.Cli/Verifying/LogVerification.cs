using System.Globalization;
using Training.Proofs.Log;
using Training.Proofs.Signing;

namespace Training.Cli.Verifying;

/// <summary>Walks through an export of the log and names the first entry that does not fit.</summary>
internal static class LogVerification
{
    /// <returns>Whether everything fits, by keys that whoever checks gave.</returns>
    public static bool Tell(VerifyInput input, TextWriter output, DateTimeOffset now)
    {
        var read = LogExport.Read(Lines(input.File));
        if (!read.IsOk)
        {
            output.WriteLine($"Not proved. {read.Sentence}");
            return false;
        }

        var export = read.Value;
        // A single key is taken for that of whoever signed the newest checkpoint; one that was kept is older than the file's.
        var issuer = (export.Checkpoints.Count > 0 ? export.Checkpoints[^1] : input.Checkpoint)?.Key.Controller ?? "";
        var keys = input.Keys?.For(issuer) ?? export.OwnKeys;
        List<SignedCheckpoint> checkpoints = [.. export.Checkpoints];
        if (input.Checkpoint is { } kept) checkpoints.Add(kept);
        var walk = LogWalk.Check(export.Entries, checkpoints, keys, now);
        var fault = walk.FirstFault?.Sentence ?? export.Fault
            ?? (input.Keys is { } given ? KeyDocuments.Objection(export.Issuers, keys, given.AreAll) : null);
        if (fault is not null)
        {
            output.WriteLine($"Not proved. {fault}");
            return false;
        }

        var covered = walk.CoveredBy?.Size ?? 0;
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{walk.Head.Size} entries fit, and so do their checkpoints ({checkpoints.Count}). A signature vouches for the first {covered}."));
        if (covered < walk.Head.Size)
            output.WriteLine($"not checked: nothing signed vouches for the entries from {covered} on yet; take a later export.");
        if (input.Keys is null)
        {
            output.WriteLine("not checked: no key was given with --key, so nothing says that the keys are those of the log's keeper.");
            foreach (var key in keys.Keys) output.WriteLine($"  The file itself names {key.Id}");
        }

        var isProved = input.Keys is not null && covered == walk.Head.Size && covered > 0;
        output.WriteLine(isProved
            ? string.Create(CultureInfo.InvariantCulture, $"Proved: the log is whole up to its checkpoint at {covered} entries, of {walk.CoveredBy!.Time.UtcDateTime:d MMM yyyy, HH:mm} UTC.")
            : "Not proved.");
        return isProved;
    }

    private static IEnumerable<ReadOnlyMemory<byte>> Lines(ReadOnlyMemory<byte> file)
    {
        while (!file.IsEmpty)
        {
            var end = file.Span.IndexOf((byte)'\n');
            yield return end < 0 ? file : file[..end];
            file = end < 0 ? default : file[(end + 1)..];
        }
    }
}

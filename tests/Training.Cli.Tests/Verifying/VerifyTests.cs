using System.Text;
using Training.Proofs.StatusLists;

namespace Training.Cli.Tests.Verifying;

public sealed class VerifyTests : CommandLine
{
    [Fact]
    public void A_pack_is_proved_by_the_issuers_key_document_or_by_one_key_of_it()
    {
        using var files = new ProvedFiles();
        var pack = Write("proof.json", files.Pack());
        foreach (var key in new[] { Write("did.json", files.Document), files.Multikey, files.Id.Value })
        {
            var outcome = Run("verify", pack, "--key", key, "--name", "Amara Okafor");
            Assert.True(outcome.Code == ExitCode.Done, outcome.Output + outcome.Errors);
            Assert.Equal("Proved: every check passed.", outcome.Lines[^1]);
            Assert.StartsWith("Amara Okafor, Quillmoor Coachworks: Electrical isolation", outcome.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Without_a_key_it_is_said_that_nobody_knows_whose_the_keys_are_and_where_to_compare_them()
    {
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.Pack()));
        Assert.Equal((ExitCode.AtFault, "Not proved."), (outcome.Code, outcome.Lines[^1]));
        Assert.Contains("https://eastvale.example/.well-known/did.json", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("  no ", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_credential_alone_is_not_proved_until_its_status_lists_are_at_hand()
    {
        using var files = new ProvedFiles();
        var credential = Write("record.json", files.Credential().ToJsonString());
        var without = Run("verify", credential, "--key", files.Multikey);
        Assert.Equal(ExitCode.AtFault, without.Code);
        Assert.Contains("not checked status     The status list https://eastvale.example/status/withdrawn/1 is not at hand.", without.Output, StringComparison.Ordinal);
        var with = Run(
            "verify", credential, "--key", files.Multikey,
            "--status", Write("w.json", files.List(StatusPurpose.Revocation).ToJsonString()),
            "--status", Write("s.json", files.List(StatusPurpose.Suspension).ToJsonString()));
        Assert.True(with.Code == ExitCode.Done, with.Output);
    }

    [Fact]
    public void A_pack_of_a_job_says_of_each_person_how_they_stood_on_its_days()
    {
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.PackOfJob()), "--key", files.Multikey);
        Assert.True(outcome.Code == ExitCode.Done, outcome.Output + outcome.Errors);
        Assert.Contains("The job for Larkfield Haulage, K26-0142, by Quillmoor Coachworks: 2026-03-10 to 2026-03-12", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("Amara Okafor, Electrical isolation: competent on every day.", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_of_the_job_on_which_somebody_might_not_do_the_work_is_not_proved()
    {
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.PackOfJob(holdsOnTheSecondDay: false)), "--key", files.Multikey);
        Assert.Equal((ExitCode.AtFault, "Not proved."), (outcome.Code, outcome.Lines[^1]));
        Assert.Contains("2026-03-11 not competent (suspended)", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_said_of_a_job_and_was_changed_is_told() => No(
        files => files.PackOfJob().Replace("2026-03-12", "2026-03-13", StringComparison.Ordinal), "signature", "altered");

    [Fact]
    public void A_changed_letter_is_told() => No(
        files => files.Pack().Replace("Quillmoor", "Quillmoar", StringComparison.Ordinal), "signature", "altered");

    [Fact]
    public void A_swapped_name_is_told_by_the_signature_and_by_the_question_whose_it_is()
    {
        No(files => files.Pack().Replace("Amara Okafor", "Bao Nguyen", StringComparison.Ordinal), "signature", "altered");
        No(files => files.Pack(), "person", "It is not about Bao Nguyen.", "--name", "Bao Nguyen");
    }

    [Fact]
    public void Another_shops_key_is_told()
    {
        using var other = new ProvedFiles("brackenhill");
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.Pack()), "--key", other.Multikey);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("  no          key", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_expired_record_is_told_and_held_on_a_day_before()
    {
        No(files => files.Pack(files.Credential(ProvedFiles.Now.AddDays(-2))), "end", "and no longer");
        using var files = new ProvedFiles();
        var pack = Write("old.json", files.Pack(files.Credential(ProvedFiles.Now.AddDays(-2))));
        Assert.Equal(ExitCode.Done, Run("verify", pack, "--key", files.Multikey, "--on", ProvedFiles.Now.AddDays(-5).ToString("yyyy-MM-dd", null)).Code);
    }

    [Fact]
    public void A_withdrawn_record_is_told() => No(files => files.Pack(null, 94567), "status", "is withdrawn");

    [Fact]
    public void A_file_that_is_no_proof_or_is_not_there_is_told()
    {
        using var files = new ProvedFiles();
        var nonsense = Run("verify", Write("x.json", "nonsense"), "--key", files.Multikey);
        Assert.Equal(ExitCode.AtFault, nonsense.Code);
        Assert.StartsWith("Not proved.", nonsense.Output, StringComparison.Ordinal);
        Assert.Contains("There is no such file.", Run("verify", Path.Combine(Folder, "none.json")).Errors, StringComparison.Ordinal);
        Assert.Contains("neither a key", Run("verify", Write("p.json", files.Pack()), "--key", "z6Mk").Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_whole_log_is_proved_and_one_without_a_key_says_what_was_not_checked()
    {
        using var files = new ProvedFiles();
        var log = Write("log.jsonl", files.Export());
        var outcome = Run("verify", "--log", log, "--key", files.Multikey);
        Assert.True(outcome.Code == ExitCode.Done, outcome.Output);
        Assert.Equal("3 entries fit, and so do their checkpoints (1). A signature vouches for the first 3.", outcome.Lines[0]);
        var without = Run("verify", "--log", log);
        Assert.Equal(ExitCode.AtFault, without.Code);
        Assert.Contains("no key was given", without.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_that_was_cut_is_found_by_a_checkpoint_that_was_kept()
    {
        using var files = new ProvedFiles();
        var cut = Write("log.jsonl", string.Join('\n', files.Export().Split('\n')[..3]));
        var outcome = Run("verify", "--log", cut, "--key", files.Multikey, "--checkpoint", Write("kept.json", files.Checkpoint.Write().ToString()));
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("The log ends after 2 entries, but a checkpoint says that it had 3.", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Not_one_byte_of_an_exported_log_can_be_changed_unnoticed()
    {
        using var files = new ProvedFiles();
        var whole = Encoding.UTF8.GetBytes(files.Export());
        var path = Path.Combine(Folder, "log.jsonl");
        // The keys in the first line are not believed: the key is given.
        var first = whole.AsSpan().IndexOf((byte)'\n') + 1;
        for (var at = first; at < whole.Length - 1; at++)
        {
            var altered = (byte[])whole.Clone();
            altered[at] ^= (byte)(1 << (at % 7));
            File.WriteAllBytes(path, altered);
            Assert.True(Run("verify", "--log", path, "--key", files.Multikey).Code == ExitCode.AtFault, $"Byte {at} was changed and not found.");
        }
    }

    private void No(Func<ProvedFiles, string> file, string subject, string reason, params string[] more)
    {
        using var files = new ProvedFiles();
        var outcome = Run(["verify", Write("proof.json", file(files)), "--key", files.Multikey, .. more]);
        Assert.Equal((ExitCode.AtFault, "Not proved."), (outcome.Code, outcome.Lines[^1]));
        var told = outcome.Lines.Single(line => line.StartsWith("  no ", StringComparison.Ordinal));
        Assert.Contains(subject, told, StringComparison.Ordinal);
        Assert.Contains(reason, told, StringComparison.Ordinal);
    }
}

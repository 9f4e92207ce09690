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
            Assert.Equal($"Proved for {Today}: every check passed. Amara Okafor, Electrical isolation.", outcome.Lines[^1]);
            Assert.StartsWith("Amara Okafor, Quillmoor Coachworks: Electrical isolation", outcome.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Without_a_key_it_is_said_that_nobody_knows_whose_the_keys_are_and_where_to_compare_them()
    {
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.Pack()));
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.StartsWith($"Not proved for {Today}. ", outcome.Lines[^1], StringComparison.Ordinal);
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
        Assert.Contains("the record is withdrawn, or ended early by a new revision", Run(
            "verify", credential, "--key", files.Multikey, "--status", Write("void.json", files.List(StatusPurpose.Revocation, 94567).ToJsonString())).Output, StringComparison.Ordinal);
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
        Assert.Contains("The job for Larkfield Haulage, K26-0142, by Quillmoor Coachworks: 10 Mar 2026 to 12 Mar 2026", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("Amara Okafor, Electrical isolation: competent on every day.", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_of_the_job_on_which_somebody_might_not_do_the_work_is_not_proved()
    {
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.PackOfJob(holdsOnTheSecondDay: false)), "--key", files.Multikey);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("11 Mar 2026 not competent (suspended)", outcome.Lines[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_said_of_a_job_and_was_changed_is_told() => No(
        files => files.PackOfJob().Replace("2026-03-12", "2026-03-13", StringComparison.Ordinal), "signature", "altered", alsoWhole: true);

    [Fact]
    public void A_changed_letter_is_told() => No(
        files => files.Pack().Replace("Quillmoor", "Quillmoar", StringComparison.Ordinal), "signature", "altered", alsoWhole: true);

    [Fact]
    public void A_swapped_name_is_told_by_the_signature_and_by_the_question_whose_it_is()
    {
        No(files => files.Pack().Replace("Amara Okafor", "Bao Nguyen", StringComparison.Ordinal), "signature", "altered", alsoWhole: true);
        No(files => files.Pack(), "person", "It is not about Bao Nguyen.", more: ["--name", "Bao Nguyen"]);
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
    public void A_record_that_the_list_voids_and_nobody_withdrew_expired_early_as_on_the_page() => No(files => files.Pack(null, 94567), "status", "the record expired early: a new revision ended it");

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
        Assert.StartsWith("Proved: the log is whole up to its checkpoint at 3 entries, of ", outcome.Lines[^1], StringComparison.Ordinal);
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

    [Fact]
    public void A_day_on_which_the_record_was_suspended_is_not_proved_though_it_is_reinstated_since()
    {
        using var files = new ProvedFiles();
        var pack = Write("proof.json", files.PackOfThePast());
        var suspended = Run("verify", pack, "--key", files.Multikey, "--on", Ago(8));
        Assert.Equal(ExitCode.AtFault, suspended.Code);
        Assert.StartsWith($"Not proved for {Told(8)}. Amara Okafor, Quillmoor Coachworks: Electrical isolation: The log says that it was suspended on {Told(10)}", suspended.Lines[^1], StringComparison.Ordinal);
        foreach (var day in new[] { 12, 6, 5 })
        {
            var outcome = Run("verify", pack, "--key", files.Multikey, "--on", Ago(day));
            Assert.True(outcome.Code == ExitCode.Done, outcome.Output);
        }
    }

    [Fact]
    public void A_file_that_is_not_signed_as_a_whole_is_read_and_never_wholly_proved()
    {
        using var files = new ProvedFiles();
        var outcome = Run("verify", Write("proof.json", files.OldPack()), "--key", files.Multikey);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("not checked whole      It is not signed as a whole", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("  no ", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("This file says nothing of a job.", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_that_was_taken_out_pasted_in_or_renamed_is_told()
    {
        No(Pasted("job", null), "whole", "altered");
        No(files => Pasted("job", files.PackOfJob())(new()), "whole", "altered");
        using var files = new ProvedFiles();
        var renamed = Run("verify", Write("proof.json", files.PackOfJob().Replace("\"job\":", "\"jobs\":", StringComparison.Ordinal)), "--key", files.Multikey);
        Assert.Equal("Not proved. The file holds something that no proof file has: \"jobs\".", renamed.Lines[^1]);
        No(made => made.OldPackOfJob("Bao Nguyen"), "people", "The statement about the job says Bao Nguyen");

        // Without a donor the member is taken out of a pack of a job, with one it is put into a pack of none.
        static Func<ProvedFiles, string> Pasted(string member, string? donor) => files =>
        {
            var pack = System.Text.Json.Nodes.JsonNode.Parse(donor is null ? files.PackOfJob() : files.Pack())!.AsObject();
            pack.Remove(member);
            if (donor is not null) pack[member] = System.Text.Json.Nodes.JsonNode.Parse(donor)![member]!.DeepClone();
            return pack.ToJsonString();
        };
    }

    [Fact]
    public void Not_one_byte_of_a_pack_can_be_changed_unnoticed()
    {
        using var files = new ProvedFiles();
        var whole = Encoding.UTF8.GetBytes(files.PackOfJob());
        var path = Path.Combine(Folder, "proof.json");
        // A file of some kilobytes, and each run checks all signatures: every seventh byte, and all of its own key document.
        var document = Encoding.UTF8.GetString(whole).IndexOf("\"issuer\":{\"@context\"", StringComparison.Ordinal);
        for (var at = 0; at < whole.Length; at += at >= document && at < document + 500 ? 1 : 7)
        {
            var altered = (byte[])whole.Clone();
            altered[at] ^= (byte)(1 << (at % 7));
            File.WriteAllBytes(path, altered);
            Assert.True(Run("verify", path, "--key", files.Multikey).Code == ExitCode.AtFault, $"Byte {at} was changed and not found.");
        }
    }

    [Fact]
    public void A_file_whose_own_keys_are_not_those_that_were_given_is_told()
    {
        using var files = new ProvedFiles();
        using var other = new ProvedFiles("brackenhill");
        var alien = files.OldPack().Replace(files.Document, other.Document, StringComparison.Ordinal);
        var outcome = Run("verify", Write("proof.json", alien), "--key", Write("did.json", files.Document));
        Assert.Contains("  no          keys       The file names a key that did:web:eastvale.example does not have", outcome.Output, StringComparison.Ordinal);
        var log = Run("verify", "--log", Write("log.jsonl", files.Export().Replace(files.Document, other.Document, StringComparison.Ordinal)), "--key", Write("d.json", files.Document));
        Assert.Equal(ExitCode.AtFault, log.Code);
        Assert.Contains("The file names a key that", log.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_minus_sign_is_standard_input()
    {
        using var files = new ProvedFiles();
        Assert.Equal(ExitCode.Done, RunWith(files.Pack(), "verify", "-", "--key", files.Multikey).Code);
        Assert.Equal(ExitCode.Done, RunWith(files.Export(), "verify", "--log", "-", "--key", files.Multikey).Code);
        Assert.Equal(ExitCode.Done, RunWith(files.Document, "verify", Write("proof.json", files.Pack()), "--key", "-").Code);
        Assert.Equal(ExitCode.WrongUsage, RunWith("", "verify", "-", "--key", "-").Code);
    }

    [Fact]
    public void A_newer_checkpoint_takes_the_extension_that_leads_to_it()
    {
        using var files = new ProvedFiles();
        var (pack, (checkpoint, extension)) = (Write("proof.json", files.Pack()), files.Later());
        var (newer, leads) = (Write("checkpoint.json", checkpoint), Write("extension.json", extension));
        Assert.Equal(ExitCode.AtFault, Run("verify", pack, "--key", files.Multikey, "--checkpoint", newer).Code);
        var outcome = Run("verify", pack, "--key", files.Multikey, "--checkpoint", newer, "--extension", leads);
        Assert.True(outcome.Code == ExitCode.Done, outcome.Output + outcome.Errors);
        Assert.Equal(ExitCode.WrongUsage, Run("verify", pack, "--key", files.Multikey, "--extension", leads).Code);
        Assert.Contains("does not show that one log", Run("verify", pack, "--checkpoint", newer, "--extension", newer).Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_status_list_that_is_none_is_refused_and_an_empty_file_and_a_marked_one_are_told_apart()
    {
        using var files = new ProvedFiles();
        var pack = Write("proof.json", files.Pack());
        var wrong = Run("verify", pack, "--key", files.Multikey, "--status", Write("x.pdf", "%PDF-1.7"));
        Assert.Equal(ExitCode.AtFault, wrong.Code);
        Assert.Contains("x.pdf:1:1: error: The document is not JSON", wrong.Errors, StringComparison.Ordinal);
        Assert.Equal("Not proved. The file is empty.", Run("verify", Write("empty.json", "")).Lines[^1]);
        Assert.Equal(ExitCode.Done, Run("verify", Write("marked.json", "\uFEFF" + files.Pack()), "--key", files.Multikey).Code);
    }

    private static string Today => Told(0);

    private static string Told(int daysAgo) => ProvedFiles.Now.UtcDateTime.AddDays(-daysAgo).ToString("d MMM yyyy", System.Globalization.CultureInfo.InvariantCulture);

    private static string Ago(int days) => ProvedFiles.Now.UtcDateTime.AddDays(-days).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private void No(Func<ProvedFiles, string> file, string subject, string reason, bool alsoWhole = false, string[]? more = null)
    {
        using var files = new ProvedFiles();
        var outcome = Run(["verify", Write("proof.json", file(files)), "--key", files.Multikey, .. more ?? []]);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.StartsWith($"Not proved for {Today}. ", outcome.Lines[^1], StringComparison.Ordinal);
        var no = outcome.Lines.Where(line => line.StartsWith("  no ", StringComparison.Ordinal)).ToList();
        // What was changed anywhere is told of the whole file, too.
        if (alsoWhole) Assert.True(no.RemoveAll(line => line.StartsWith("  no          whole", StringComparison.Ordinal)) == 1);
        var told = Assert.Single(no);
        Assert.Contains(subject, told, StringComparison.Ordinal);
        Assert.Contains(reason, told, StringComparison.Ordinal);
    }
}

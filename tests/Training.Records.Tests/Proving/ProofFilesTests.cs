using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;
using Training.Records.Proving;
using Training.Records.Tests.Ledger;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Proving;

/// <summary>What a customer takes away, and what the customer's page says, when all is well and when something is not.</summary>
public sealed class ProofFilesTests
{
    [Fact]
    public async Task A_pack_is_proved_without_a_network_by_the_keys_of_the_issuers_address()
    {
        await using var world = await Create();
        var (amara, bao) = (await world.EarnedRecord(world.Technician), await world.EarnedRecord(world.Colleague));
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [amara, bao], "Larkfield Haulage")));
        var bytes = Ok(await Pack(world, proof.Token));
        Assert.True(Jcs.ReadCanonical(bytes).IsOk);
        var pack = ProofPack.Read(StrictJson.ReadObject(bytes).Value).Value;
        Assert.Equal(2, pack.Credentials.Count);
        foreach (var (credential, name) in pack.Credentials.Zip(["Amara Okafor", "Bao Nguyen"]))
        {
            var report = await Check(world, pack, credential, name);
            Assert.True(report.State == CheckState.Passed, Told(report));
            Assert.Equal("Quillmoor Coachworks", report.Credential!.Shop);
            Assert.Equal(new DateTimeOffset(2028, 3, 2, 23, 59, 59, TimeSpan.Zero), report.Credential.ValidUntil);
            Assert.Contains(report.Credential.Judged, judged => judged.Name == "procedures/stow-tray.yaml, revision 1");
        }
    }

    [Fact]
    public async Task A_single_credential_brings_its_own_checkpoint_and_names_its_record()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var credential = StrictJson.ReadObject(Ok(await Credential(world, proof.Token, record))).Value;
        Assert.Equal($"urn:uuid:{record}", (string?)credential["id"]);
        var report = await Check(world, ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value with { Checkpoint = null }, credential);
        Assert.Equal(CheckState.Passed, Assert.Single(report.Of(Training.Proofs.Credentials.Check.Log)).State);
        NotFound(await Credential(world, proof.Token, new(Guid.NewGuid())));
    }

    [Fact]
    public async Task A_changed_letter_a_swapped_name_and_another_key_are_each_told()
    {
        await using var world = await Create();
        await using var other = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var pack = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        var text = pack.Credentials[0].ToJsonString();
        Assert.Equal(CheckReason.SignatureDoesNotFit, Failed(await Check(world, pack, Parsed(text.Replace("Quillmoor", "Quillmoar", StringComparison.Ordinal)))));
        Assert.Equal(CheckReason.SignatureDoesNotFit, Failed(await Check(world, pack, Parsed(text.Replace("Amara Okafor", "Bao Nguyen", StringComparison.Ordinal)))));
        Assert.Equal(CheckReason.AnotherPerson, Failed(await Check(world, pack, pack.Credentials[0], "Bao Nguyen")));
        Assert.Equal(CheckReason.UnknownKey, Failed(await Check(other, pack, pack.Credentials[0])));
    }

    [Fact]
    public async Task A_suspended_a_withdrawn_and_an_expired_record_are_each_told_by_an_older_file()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var credential = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value.Credentials[0];
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        Assert.Equal(CheckReason.Suspended, Failed(await Check(world, await Fresh(), credential)));
        Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Back.")));
        Assert.Equal(CheckState.Passed, (await Check(world, await Fresh(), credential)).Of(Training.Proofs.Credentials.Check.Status).Max(result => result.State));
        Ok(await world.Records(records => records.Withdraw(world.Examiner, record, "The paper was copied.")));
        Assert.Equal(CheckReason.Withdrawn, Failed(await Check(world, await Fresh(), credential)));
        world.Clock.Set(new(2028, 3, 3, 0, 0, 0, TimeSpan.Zero));
        Assert.Contains(CheckReason.Expired, (await Check(world, await Fresh(), credential)).Results.Select(result => result.Reason));

        async Task<ProofPack> Fresh() => ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
    }

    [Fact]
    public async Task A_file_without_a_fresh_status_list_says_so_the_day_after()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var pack = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        world.Clock.Advance(TimeSpan.FromHours(25));
        var report = await Check(world, pack, pack.Credentials[0]);
        Assert.Equal((CheckState.NotChecked, CheckReason.StatusListTooOld), (report.State, report.Results.First(result => result.State == CheckState.NotChecked).Reason));
    }

    [Fact]
    public async Task What_an_ended_key_signed_holds_by_the_log_of_today_and_what_a_stolen_one_signed_does_not()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var pack = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        Ok(await world.With<Issuers.SigningKeys, Outcome<Issuers.SigningKeysView, Refusal>>(keys => keys.Replace(world.Administrator)));
        Assert.Equal(CheckReason.KeyExpired, Failed(await Check(world, pack, pack.Credentials[0])));
        Ok(await SigningTests.Sign(world));
        var newest = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        Assert.Equal(CheckState.Passed, (await Check(world, newest, pack.Credentials[0])).State);
        var second = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        Ok(await world.With<Issuers.SigningKeys, Outcome<Issuers.SigningKeysView, Refusal>>(keys => keys.GiveUp(world.Administrator)));
        Assert.Equal(CheckReason.KeyRevoked, Failed(await Check(world, second, second.Credentials[0])));
    }

    [Fact]
    public async Task The_file_is_signed_as_a_whole_by_the_issuer_of_its_credentials()
    {
        await using var world = await Create();
        var (amara, bao) = (await world.EarnedRecord(world.Technician), await world.EarnedRecord(world.Colleague));
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [amara, bao])));
        var keys = DidDocument.Read(Ok(await SigningTests.Document(world)), DidWeb.Parse("did:web:eastvale.example").Value).Value;
        var bytes = Ok(await Pack(world, proof.Token));
        Assert.True(Whole(_ => { }));
        Assert.False(Whole(pack => ((JsonArray)pack["credentials"]!).RemoveAt(0)));
        Assert.False(Whole(pack => pack.Remove("histories")));
        Assert.False(Whole(pack => pack.Remove("checkpoint")));
        Assert.False(Whole(pack => pack.Remove("proof")));
        Assert.False(ProofPack.Read(Altered(pack => pack["jobs"] = new JsonObject())).IsOk);

        bool Whole(Action<JsonObject> alter) => ProofPack.Read(Altered(alter)).Value.CheckWhole(keys, world.Clock.GetUtcNow()).IsOk;
        JsonObject Altered(Action<JsonObject> alter)
        {
            var pack = StrictJson.ReadObject(bytes).Value;
            alter(pack);
            return pack;
        }
    }

    [Fact]
    public async Task The_file_tells_of_each_day_before_it_whether_the_record_was_suspended()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        world.Clock.Set(new(2026, 11, 18, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        world.Clock.Set(new(2026, 11, 30, 9, 0, 0, TimeSpan.Zero));
        Ok(await world.Records(records => records.Reinstate(world.Owner, record, "Back.")));
        var pack = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        Assert.Equal(2, pack.Histories[$"urn:uuid:{record}"].Count);
        Assert.Equal(CheckState.Passed, (await On(17)).State);
        Assert.Equal(CheckReason.Suspended, Failed(await On(18)));
        Assert.Equal(CheckReason.Suspended, Failed(await On(20)));
        Assert.Equal(CheckState.Passed, (await On(30)).State);

        Task<VerificationReport> On(int day) => Check(world, pack, pack.Credentials[0], on: new(2026, 11, day));
    }

    [Fact]
    public async Task A_person_whose_name_was_removed_is_left_out_and_the_others_stay_proved()
    {
        await using var world = await Create();
        var (amara, bao) = (await world.EarnedRecord(world.Technician), await world.EarnedRecord(world.Colleague));
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [amara, bao])));
        Ok(await world.With<Training.Records.Accounts.NameRemovals, Outcome<PersonId, Refusal>>(removals => removals.Remove(world.Administrator, world.Technician.Person)));
        var shown = await Shown(world, proof.Token);
        Assert.Equal((true, "Bao Nguyen", 1), (shown.AllHold, Assert.Single(shown.Records).Name, shown.NamesRemoved.Count));
        var pack = ProofPack.Read(StrictJson.ReadObject(Ok(await Pack(world, proof.Token))).Value).Value;
        Assert.Equal(CheckState.Passed, (await Check(world, pack, Assert.Single(pack.Credentials), "Bao Nguyen")).State);
    }

    [Fact]
    public async Task A_record_that_was_given_to_somebody_who_holds_the_same_is_told_as_tampered_with()
    {
        await using var world = await Create();
        var (amara, bao) = (await world.EarnedRecord(world.Technician), await world.EarnedRecord(world.Colleague));
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [amara, bao])));
        await world.Db(db => db.CompetencyRecords.Where(known => known.Id == amara)
            .ExecuteUpdateAsync(set => set.SetProperty(known => known.PersonId, world.Colleague.Person)));
        var shown = await Shown(world, proof.Token);
        Assert.False(shown.AllHold);
        Assert.Equal(RecordDoubt.AnotherName, shown.Records.Single(record => record.Record == amara).Doubt);
        Refused(await Pack(world, proof.Token), "Nothing is signed, because the record of Bao Nguyen is not as it was issued.");
    }

    [Fact]
    public async Task A_name_that_was_swapped_in_the_database_makes_the_page_say_no_and_nothing_is_signed()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        await world.Db(db => db.Database.ExecuteSqlRawAsync("UPDATE AspNetUsers SET DisplayName = 'Bao Nguyen' WHERE UserName = 'amara'"));
        var shown = await Shown(world, proof.Token);
        Assert.Equal((false, RecordDoubt.AnotherName), (shown.AllHold, Assert.Single(shown.Records).Doubt));
        Refused(await Pack(world, proof.Token), "Nothing is signed, because the record of Bao Nguyen is not as it was issued.");
    }

    [Fact]
    public async Task A_record_that_was_given_to_somebody_else_or_another_shop_makes_the_page_say_no()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        await world.Db(db => db.CompetencyRecords.ExecuteUpdateAsync(set => set.SetProperty(known => known.ShopId, world.Brackenhill)));
        Assert.Equal(RecordDoubt.AnotherShop, Assert.Single((await Shown(world, proof.Token)).Records).Doubt);
    }

    [Fact]
    public async Task A_letter_changed_in_the_log_or_a_checkpoint_of_another_key_makes_the_page_say_no_with_the_reason()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        Assert.True((await Shown(world, proof.Token)).AllHold);
        Ok(await SigningTests.Sign(world));
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            "UPDATE LogEntries SET Text = CAST(replace(CAST(Text AS TEXT), 'Europe/London', 'Europe/Dublin') AS BLOB)"));
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        var altered = await Shown(world, proof.Token);
        Assert.False(altered.AllHold);
        Assert.EndsWith("does not have the hash that was stored with it.", altered.Log!.Fault, StringComparison.Ordinal);
        await world.Db(db => db.Database.ExecuteSqlRawAsync(
            "UPDATE LogEntries SET Text = CAST(replace(CAST(Text AS TEXT), 'Europe/Dublin', 'Europe/London') AS BLOB)"));
        world.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.True((await Shown(world, proof.Token)).AllHold);
        await world.Db(db => db.Database.ExecuteSqlRawAsync("DELETE FROM IssuerKeys"));
        File.Delete(world.KeyFile);
        await world.Restart();
        Assert.Equal("The checkpoint at size", (await Shown(world, proof.Token)).Log!.Fault![..22]);
    }

    [Fact]
    public async Task An_ended_or_unknown_proof_gives_no_file()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        Ok(await world.Proofs(proofs => proofs.End(world.Owner, proof.Id)));
        Refused(await Pack(world, proof.Token), "The shop ended this proof.");
        Assert.False((await Pack(world, "guess")).IsOk);
    }

    [Fact]
    public async Task Places_in_the_status_lists_are_drawn_and_no_two_alike()
    {
        await using var world = await Create();
        foreach (var technician in new[] { world.Technician, world.Colleague, world.ShopExaminer })
            await world.PassedPaper(technician, TrayTheory);
        var places = await world.Db(db => db.CompetencyRecords.Select(record => record.StatusPlace).ToListAsync());
        Assert.Equal(3, places.Distinct().Count());
        Assert.NotEqual([0, 1, 2], places.Order());
    }

    internal static Task<Outcome<byte[], Refusal>> Pack(TestWorld world, string token) =>
        world.With<ProofFiles, Outcome<byte[], Refusal>>(files => files.Pack(token));

    private static Task<Outcome<byte[], Refusal>> Credential(TestWorld world, string token, RecordId record) =>
        world.With<ProofFiles, Outcome<byte[], Refusal>>(files => files.Credential(token, record));

    private static async Task<ShownProof.Shown> Shown(TestWorld world, string token) =>
        Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(token))));

    /// <summary>Checks as a customer does: with the key document of that world, and the rest from the pack.</summary>
    private static async Task<VerificationReport> Check(TestWorld world, ProofPack pack, JsonObject credential, string? name = null, DateOnly? on = null)
    {
        var document = Ok(await SigningTests.Document(world));
        return CredentialVerifier.Check(Jcs.Canonicalize(credential).Value.Utf8, new()
        {
            Now = world.Clock.GetUtcNow(),
            Keys = DidDocument.Read(document, DidWeb.Parse("did:web:eastvale.example").Value).Value,
            StatusLists = [.. pack.StatusLists.Select(list => (ReadOnlyMemory<byte>)Jcs.Canonicalize(list).Value.Utf8.ToArray())],
            Checkpoint = pack.Checkpoint,
            PersonName = name,
            On = on,
            History = pack.Histories[(string)credential["id"]!],
        });
    }

    private static CheckReason Failed(VerificationReport report) => report.Results.First(result => result.State == CheckState.Failed).Reason;

    private static string Told(VerificationReport report) => string.Join('\n', report.Results);

    private static JsonObject Parsed(string text) => StrictJson.ReadObject(System.Text.Encoding.UTF8.GetBytes(text)).Value;
}

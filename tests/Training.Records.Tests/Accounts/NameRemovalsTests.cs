using Microsoft.Data.Sqlite;
using Training.Records.Accounts;
using Training.Records.Ledger;
using Training.Records.Proving;
using Training.Records.Tests.Ledger;
using Training.Sequencing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Accounts;

public sealed class NameRemovalsTests
{
    [Fact]
    public async Task The_name_is_gone_from_the_database_and_from_its_file_and_the_log_still_holds()
    {
        await using var world = await Create();
        var zoe = await world.Add("Zoë Quartermain-Ng", "zoe-q", world.Quillmoor, Roles.Technician);
        var record = await world.EarnedRecord(zoe);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "zoë was ill; see Quartermain-Ng's note.")));
        Ok(await SigningTests.Sign(world));
        Ok(await Remove(world, world.Administrator, zoe.Person));
        Ok(await SigningTests.Sign(world));
        Assert.Null((await SigningTests.Walk(world)).Fault);
        Assert.Equal("Name removed was ill; see Name removed's note.", (await world.Look(record)).Events[1].Reason);
        Assert.NotNull((await world.Look(record)).Record.NameRemovedAt);
        var held = await Bytes(world);
        foreach (var gone in new[] { "Zoë", "Quartermain", "zoe-q", "ZOE-Q" })
            Assert.False(held.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(gone)) >= 0, $"{gone} still stands in the file.");
    }

    [Fact]
    public async Task A_part_of_the_name_stays_where_it_is_somebody_elses()
    {
        await using var world = await Create();
        var zoe = await world.Add("Zoë Penrose", "zoe-p", world.Quillmoor, Roles.Technician);
        await world.EarnedRecord(zoe);
        var other = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, other, "Hollis Penrose said so, and ZOË  PENROSE saw it.")));
        Ok(await Remove(world, world.Administrator, zoe.Person));
        Assert.Equal("Hollis Penrose said so, and Name removed saw it.", (await world.Look(other)).Events[1].Reason);
    }

    [Fact]
    public async Task A_proof_of_nobody_else_says_no_with_the_day_and_the_log_has_an_entry_for_each_record()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        Ok(await Remove(world, world.Administrator, world.Technician.Person));
        var shown = Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(proof.Token))));
        Assert.False(shown.AllHold);
        Assert.Empty(shown.Records);
        Assert.Equal(new(2026, 3, 2), Assert.Single(shown.NamesRemoved).InUtc().Date);
        Assert.NotNull((await world.Db(db => world.One<LogBook>().Read(db))).Records[record].NameRemovedAt);
        Refused(
            await world.With<ProofFiles, Outcome<byte[], Refusal>>(files => files.Pack(proof.Token)),
            "Nobody is left in this proof to sign for.");
    }

    [Fact]
    public async Task Whoever_was_removed_cannot_sign_in_and_has_no_role()
    {
        await using var world = await Create();
        Ok(await Remove(world, world.Administrator, world.Technician.Person));
        Assert.Empty((await world.ActorOf(world.Technician.Person)).Roles);
        var found = await world.With<Microsoft.AspNetCore.Identity.UserManager<Person>, Person?>(users => users.FindByNameAsync("amara"));
        Assert.Null(found);
    }

    [Fact]
    public async Task Only_an_administrator_removes_a_name_once_and_never_their_own()
    {
        await using var world = await Create();
        foreach (var actor in new[] { world.Owner, world.Trainer, world.Examiner, world.Technician })
            NotAllowed(await Remove(world, actor, world.Technician.Person));
        Refused(await Remove(world, world.Administrator, world.Administrator.Person), "Nobody removes their own name; ask another administrator.");
        NotFound(await Remove(world, world.Administrator, new(Guid.NewGuid())));
        Ok(await Remove(world, world.Administrator, world.Technician.Person));
        Refused(await Remove(world, world.Administrator, world.Technician.Person), "The name is removed already.");
    }

    private static Task<Outcome<PersonId, Refusal>> Remove(TestWorld world, Actor actor, PersonId person) =>
        world.With<NameRemovals, Outcome<PersonId, Refusal>>(removals => removals.Remove(actor, person));

    private static async Task<byte[]> Bytes(TestWorld world)
    {
        SqliteConnection.ClearAllPools();
        var wal = world.DatabaseFile + "-wal";
        byte[] file = await File.ReadAllBytesAsync(world.DatabaseFile, TestContext.Current.CancellationToken);
        return File.Exists(wal) ? [.. file, .. await File.ReadAllBytesAsync(wal, TestContext.Current.CancellationToken)] : file;
    }
}

using System.Buffers.Text;
using Training.Records.Proving;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Proving;

public sealed class ProofsTests
{
    [Fact]
    public async Task A_proof_shows_the_chosen_people_and_nobody_else()
    {
        await using var world = await Create();
        var amara = await world.EarnedRecord(world.Technician);
        await world.EarnedRecord(world.Colleague);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [amara, amara], " Larkfield Haulage ")));
        var shown = await Show(world, proof);
        Assert.Equal(("Quillmoor Coachworks", "Larkfield Haulage", true), (shown.Shop, shown.ForWhom, shown.AllHold));
        Assert.Equal("Amara Okafor", Assert.Single(shown.Records).Name);
    }

    [Fact]
    public async Task A_token_has_256_bits_and_no_two_are_alike()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var first = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var second = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        Assert.Equal(32, Base64Url.DecodeFromChars(first.Token).Length);
        Assert.NotEqual(first.Token, second.Token);
    }

    [Fact]
    public async Task A_proof_says_no_once_one_of_its_records_no_longer_holds()
    {
        await using var world = await Create();
        var amara = await world.EarnedRecord(world.Technician);
        var bao = await world.EarnedRecord(world.Colleague);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [amara, bao])));
        Assert.True((await Show(world, proof)).AllHold);
        world.Clock.Advance(TimeSpan.FromDays(10));
        Ok(await world.Records(records => records.Suspend(world.Owner, bao, "Sick leave.")));
        var shown = await Show(world, proof);
        Assert.False(shown.AllHold);
        Assert.Equal([true, false], shown.Records.Select(record => record.Holds));
        var then = Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(proof.Token, new(2026, 3, 5)))));
        Assert.True(then.AllHold);
        var before = Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(proof.Token, new(2026, 3, 1)))));
        Assert.False(before.AllHold);
        Refused(
            await world.Proofs(proofs => proofs.Show(proof.Token, new(2026, 4, 1))), "A proof speaks of today or of a day before.");
    }

    [Fact]
    public async Task A_renewal_speaks_for_the_record_before_it()
    {
        await using var world = await Create();
        var first = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [first])));
        world.Clock.Set(new(2028, 1, 10, 9, 0, 0, TimeSpan.Zero));
        await world.EarnedRecord(world.Technician);
        world.Clock.Set(new(2028, 6, 1, 9, 0, 0, TimeSpan.Zero));
        Assert.Equal(new(2030, 3, 2), Assert.Single((await Show(world, proof)).Records).Standing!.Until);
    }

    [Fact]
    public async Task An_ended_proof_says_so_and_shows_nothing_else()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record])));
        var ended = Ok(await world.Proofs(proofs => proofs.End(world.Owner, proof.Id))).EndedAt;
        Assert.Equal(new ShownProof.Ended(ended!.Value), Ok(await world.Proofs(proofs => proofs.Show(proof.Token))));
        world.Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(ended, Ok(await world.Proofs(proofs => proofs.End(world.Owner, proof.Id))).EndedAt);
        Assert.Equal(ended, Assert.Single(Ok(await world.Proofs(proofs => proofs.List(world.Owner)))).EndedAt);
    }

    [Theory]
    [InlineData("")]
    [InlineData("guess")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task An_unknown_token_shows_nothing(string token)
    {
        await using var world = await Create();
        Refused(await world.Proofs(proofs => proofs.Show(token)), "There is no proof under this link; ask the shop for a new one.");
    }

    [Fact]
    public async Task Only_an_owner_makes_proofs_and_only_of_the_own_shops_records()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        foreach (var actor in new[] { world.Technician, world.Examiner, world.Administrator })
        {
            NotAllowed(await world.Proofs(proofs => proofs.Make(actor, [record])));
            NotAllowed(await world.Proofs(proofs => proofs.List(actor)));
        }

        NotFound(await world.Proofs(proofs => proofs.Make(world.ForeignOwner, [record])));
        NotFound(await world.Proofs(proofs => proofs.Make(world.Owner, [record, new(Guid.NewGuid())])));
        Refused(await world.Proofs(proofs => proofs.Make(world.Owner, [])), "Choose at least one record and at most 200.");
        Refused(
            await world.Proofs(proofs => proofs.Make(world.Owner, [record], new string('x', 201))), "Name the customer in up to 200 characters.");
    }

    private static async Task<ShownProof.Shown> Show(TestWorld world, ProofLine proof) =>
        Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(proof.Token))));
}

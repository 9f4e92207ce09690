using Training.Content.Scenarios;
using Training.Records.Certifying;
using Training.Records.Overviews;
using Training.Records.Proving;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests;

public sealed class MainWayTests
{
    [Fact]
    public async Task A_technician_goes_from_the_lesson_to_a_record_that_a_customer_can_check()
    {
        await using var world = await TestWorld.Create();
        var amara = world.Technician;
        Assert.IsType<PathStep.Read>(await Next());

        Ok(await world.Reading(reading => reading.Finish(amara, new("01-trays"))));
        Assert.IsType<PathStep.Practise>(await Next());

        foreach (var (scenario, kind) in new[] { ("tray-plain", QuestionKind.Order), ("tray-hurry", QuestionKind.Order), ("tray-half", QuestionKind.Finish) })
        {
            var asked = Ok(await world.Practice(practice => practice.Draw(amara, new(scenario), kind)));
            var result = Ok(await world.Practice(practice => practice.HandIn(
                amara, new(Guid.NewGuid(), asked.Ticket, Ways.RightAnswer(asked.Question)))));
            Assert.True(result.Judged.Accepted);
        }

        Assert.IsType<PathStep.SitPaper>(await Next());
        await world.PassedPaper(amara);
        Assert.Equal(ChangeTray, Assert.IsType<PathStep.BeObserved>(await Next()).Procedure);
        Assert.Null((await world.SignedRun(amara, ChangeTray)).Record);
        Assert.Equal(StowTray, Assert.IsType<PathStep.BeObserved>(await Next()).Procedure);
        var record = (await world.SignedRun(amara, StowTray)).Record;
        Assert.NotNull(record);
        Assert.Null(await Next());

        var proof = Ok(await world.Proofs(proofs => proofs.Make(world.Owner, [record.Value], "Larkfield Haulage")));
        var shown = Assert.IsType<ShownProof.Shown>(Ok(await world.Proofs(proofs => proofs.Show(proof.Token))));
        Assert.True(shown.AllHold);
        var only = Assert.Single(shown.Records);
        Assert.Equal(("Amara Okafor", "Changing relay trays", RecordState.Current), (only.Name, only.CompetencyTitle, only.Standing!.State));

        async Task<PathStep?> Next() => Ok(await world.Overview(overview => overview.WhatNext(amara, amara.Person)))
            .Single(path => path.Competency == RelayTrays).Next;
    }
}

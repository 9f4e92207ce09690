using Training.Records.Certifying;
using Training.Records.Examining;
using Training.Records.Overviews;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Overviews;

public sealed class OverviewTests
{
    [Fact]
    public async Task Whoever_failed_is_told_from_when_on_the_paper_can_be_sat_again()
    {
        await using var world = await Create();
        Ok(await world.Reading(reading => reading.Finish(world.Technician, new("01-trays"))));
        var paper = await world.FailedPaper(world.Technician);
        var step = (await Path(world)).Steps.OfType<PathStep.SitPaper>().Single();
        Assert.Equal((paper, PaperState.HandedIn, false), (step.Paper, step.State, step.IsDone));
        Assert.Equal(world.Clock.GetUtcNow().AddDays(1), step.NotBefore!.Value.ToDateTimeOffset());
        world.Clock.Advance(TimeSpan.FromDays(1));
        Assert.Null((await Path(world)).Steps.OfType<PathStep.SitPaper>().Single().NotBefore);
    }

    [Fact]
    public async Task Whoever_is_admitted_is_sent_to_the_paper_whatever_is_not_read()
    {
        await using var world = await Create();
        var paper = await world.Admit(await world.OpenSitting(), world.Technician);
        Assert.Equal(paper, Assert.IsType<PathStep.SitPaper>((await Path(world)).Next).Paper);
        await world.Begin(world.Technician, paper);
        Assert.Equal(PaperState.Open, Assert.IsType<PathStep.SitPaper>((await Path(world)).Next).State);
    }

    [Fact]
    public async Task A_passed_paper_whose_time_for_the_runs_is_over_is_to_be_sat_again()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician);
        Assert.Equal(new(2026, 4, 1), Assert.IsType<PathStep.BeObserved>((await Path(world)).Next).Until);
        world.Clock.Advance(TimeSpan.FromDays(32));
        Assert.False((await Path(world)).Steps.OfType<PathStep.SitPaper>().Single().IsDone);
    }

    [Fact]
    public async Task A_record_that_is_due_starts_the_way_again()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        Assert.Null((await Path(world)).Next);
        world.Clock.Set(new(2028, 1, 10, 9, 0, 0, TimeSpan.Zero));
        var path = await Path(world);
        Assert.Equal(RecordState.Due, path.Record!.Standing!.State);
        Assert.NotNull(path.Next);
    }

    [Fact]
    public async Task Who_is_no_technician_has_no_way_to_go()
    {
        await using var world = await Create();
        Assert.Empty(Ok(await world.Overview(overview => overview.WhatNext(world.Owner, world.Owner.Person))));
        Assert.Empty(Ok(await world.Overview(overview => overview.WhatNext(world.Examiner, world.Examiner.Person))));
        NotFound(await world.Overview(overview => overview.WhatNext(world.Colleague, world.Technician.Person)));
    }

    [Fact]
    public async Task The_table_has_the_own_shops_technicians_and_what_each_may_do_on_the_day()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        var table = Ok(await world.Overview(overview => overview.WhoMayDoWhat(world.Owner)));
        Assert.Equal([RelayTrays, TrayTheory], table.Competencies.Select(column => column.Competency));
        Assert.Equal(["Amara Okafor", "Bao Nguyen", "Leila Haddad"], table.Rows.Select(row => row.Name));
        Assert.Equal(record, table.Rows[0].Records[0]!.Id);
        Assert.Null(table.Rows[0].Records[1]);
        Assert.Null(table.Rows[1].Records[0]);
        var later = Ok(await world.Overview(overview => overview.WhoMayDoWhat(world.Owner, new(2028, 6, 1))));
        Assert.Equal(RecordState.Expired, later.Rows[0].Records[0]!.Standing!.State);
        NotAllowed(await world.Overview(overview => overview.WhoMayDoWhat(world.Technician)));
        NotFound(await world.Overview(overview => overview.WhoMayDoWhat(world.Owner, shop: world.Brackenhill)));
        Assert.Equal(5, Ok(await world.Overview(overview => overview.WhoMayDoWhat(world.Examiner))).Rows.Count);
        Assert.Equal(2, Ok(await world.Overview(overview => overview.WhoMayDoWhat(world.Examiner, shop: world.Brackenhill))).Rows.Count);
    }

    [Fact]
    public async Task A_competency_that_is_no_longer_served_keeps_its_column_while_records_name_it()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        await world.One<Records.Publishing.Publisher>().Publish([.. Files.Where(file => !file.Path.Contains("theory", StringComparison.Ordinal))]);
        var table = Ok(await world.Overview(overview => overview.WhoMayDoWhat(world.Owner)));
        Assert.Equal(["Changing relay trays", "Knowing relay trays"], table.Competencies.Select(column => column.Title));
    }

    private static async Task<CompetencyPath> Path(TestWorld world) =>
        Ok(await world.Overview(overview => overview.WhatNext(world.Technician, world.Technician.Person))).Single(path => path.Competency == RelayTrays);
}

using NodaTime;
using Training.Content.Competencies;
using Training.Records.Certifying;
using Training.Records.Covering;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Covering;

public sealed class CoverageTests
{
    [Fact]
    public async Task The_number_falls_on_the_day_after_a_record_ends_and_the_lack_is_named()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        world.Clock.Set(new(2027, 9, 1, 9, 0, 0, TimeSpan.Zero));
        await world.EarnedRecord(world.Colleague);
        await Need(world, RelayTrays, 2);
        var trays = await Trays(world);
        Assert.Equal([new(new(2027, 9, 1), 2), new(new(2028, 3, 3), 1)], trays.Steps);
        Assert.Equal(new LocalDate(2028, 3, 3), trays.FirstBelow);
        Assert.Equal(["Amara Okafor", "Bao Nguyen"], trays.Holding.Select(record => record.Name));
        var renewal = Assert.Single(trays.Renewals);
        Assert.Equal("Amara Okafor", renewal.Record.Name);
        Assert.Equal(new LocalDate(2027, 12, 2), renewal.Plan.From);
        Assert.Equal(new LocalDate(2028, 2, 17), renewal.Plan.On);
        Assert.Equal(new LocalDate(2030, 3, 2), renewal.Plan.HoldsUntil);
    }

    [Fact]
    public async Task A_renewal_on_the_advised_day_brings_what_the_plan_said()
    {
        await using var world = await Create();
        await world.EarnedRecord(world.Technician);
        world.Clock.Set(new(2027, 9, 1, 9, 0, 0, TimeSpan.Zero));
        await Need(world, RelayTrays, 1);
        var plan = Assert.Single((await Trays(world)).Renewals).Plan;
        world.Clock.Set(plan.On.AtMidnight().PlusHours(9).InUtc().ToDateTimeOffset());
        await world.EarnedRecord(world.Technician);
        Assert.Equal(plan.HoldsUntil, Assert.Single((await Trays(world)).Holding).Standing!.Until);
    }

    [Fact]
    public async Task A_suspended_person_is_not_counted_and_not_sent()
    {
        await using var world = await Create();
        var record = await world.EarnedRecord(world.Technician);
        Ok(await world.Records(records => records.Suspend(world.Owner, record, "Sick leave.")));
        await Need(world, RelayTrays, 1);
        var trays = await Trays(world);
        Assert.Empty(trays.Holding);
        Assert.Empty(trays.Renewals);
        Assert.Equal(1, trays.Lacking);
        Assert.Equal(RecordState.Suspended, Assert.Single(trays.NotHolding).Standing!.State);
        Assert.Equal(new LocalDate(2026, 3, 2), trays.FirstBelow);
    }

    [Fact]
    public async Task A_missing_confirmation_lets_the_number_fall_and_needs_no_renewal()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        world.Clock.Advance(TimeSpan.FromDays(10));
        await Need(world, TrayTheory, 1);
        var theory = (await Look(world)).Competencies.Single(competency => competency.Competency == TrayTheory);
        Assert.Equal(new LocalDate(2026, 5, 3), theory.FirstBelow);
        Assert.Equal(new LocalDate(2026, 5, 2), Assert.Single(theory.Confirmations).Standing!.ConfirmBy);
        // The time itself is half a year from March and another half from September.
        Assert.Equal([new(2026, 8, 19), new(2027, 2, 16)], theory.Renewals.Select(renewal => renewal.Plan.On));
        Assert.Equal([true, false], theory.Renewals.Select(renewal => renewal.IsFirst));
    }

    [Fact]
    public async Task What_is_no_longer_served_is_shown_while_people_hold_it_and_nobody_is_sent()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        await Need(world, TrayTheory, 1);
        await world.One<Records.Publishing.Publisher>().Publish([.. Files.Where(file => !file.Path.Contains("theory", StringComparison.Ordinal))]);
        var theory = (await Look(world)).Competencies.Single(competency => competency.Competency == TrayTheory);
        Assert.Equal(("Knowing relay trays", 1, 1), (theory.Title, theory.Need, theory.Holding.Count));
        Assert.Empty(theory.Renewals);
    }

    [Fact]
    public async Task A_need_is_kept_per_shop_and_what_is_not_named_stays()
    {
        await using var world = await Create();
        await Need(world, RelayTrays, 2);
        await Need(world, TrayTheory, 1);
        await Need(world, RelayTrays, 3);
        await world.Restart();
        Assert.Equal([3, 1], (await Look(world)).Competencies.Select(competency => competency.Need));
        Assert.Equal([0, 0], Ok(await world.Coverage(coverage => coverage.Look(world.ForeignOwner))).Competencies.Select(competency => competency.Need));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(201)]
    public async Task A_need_that_no_shop_has_is_refused_and_changes_nothing(int people)
    {
        await using var world = await Create();
        await Need(world, RelayTrays, 2);
        Refused(
            await world.Coverage(coverage => coverage.SetNeeds(world.Owner, new Dictionary<CompetencyId, int> { [RelayTrays] = 1, [TrayTheory] = people })),
            "A shop needs from 0 to 200 people; write a whole number.");
        Assert.Equal([2, 0], (await Look(world)).Competencies.Select(competency => competency.Need));
    }

    [Fact]
    public async Task Only_an_owner_plans_and_only_for_what_there_is()
    {
        await using var world = await Create();
        foreach (var actor in new[] { world.Technician, world.Examiner, world.Trainer, world.Administrator })
        {
            NotAllowed(await world.Coverage(coverage => coverage.Look(actor)));
            NotAllowed(await world.Coverage(coverage => coverage.SetNeeds(actor, new Dictionary<CompetencyId, int>())));
        }

        NotFound(await world.Coverage(coverage => coverage.SetNeeds(world.Owner, new Dictionary<CompetencyId, int> { [new("no-such")] = 1 })));
    }

    [Fact]
    public async Task The_number_of_questions_to_the_database_does_not_grow_with_the_people()
    {
        await using var world = await Create();
        await world.PassedPaper(world.Technician, TrayTheory);
        await Look(world);
        var one = await Asked(world);
        await world.PassedPaper(world.Colleague, TrayTheory);
        await world.PassedPaper(world.ShopExaminer, TrayTheory);
        Assert.Equal(one, await Asked(world));
        Assert.InRange(one, 1, 8);
    }

    private static async Task<int> Asked(TestWorld world)
    {
        using var counting = new QueryCount();
        await Look(world);
        return counting.Asked;
    }

    private static async Task Need(TestWorld world, CompetencyId competency, int people) =>
        Ok(await world.Coverage(coverage => coverage.SetNeeds(world.Owner, new Dictionary<CompetencyId, int> { [competency] = people })));

    private static async Task<ShopCoverage> Look(TestWorld world) => Ok(await world.Coverage(coverage => coverage.Look(world.Owner)));

    private static async Task<CompetencyCoverage> Trays(TestWorld world) =>
        (await Look(world)).Competencies.Single(competency => competency.Competency == RelayTrays);
}

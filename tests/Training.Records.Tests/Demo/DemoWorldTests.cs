using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Training.Content;
using Training.Records.Accounts;
using Training.Records.Certifying;
using Training.Records.Demo;
using Training.Records.Overviews;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Demo;

public sealed class DemoWorldTests(SeededWorld seeded) : IClassFixture<SeededWorld>
{
    private readonly TestWorld demo = seeded.World;

    [Fact]
    public async Task The_demo_has_records_in_every_state_that_it_promises()
    {
        Assert.Equal(RecordState.Current, await StateOf(demo, "bao"));
        Assert.Equal(RecordState.Current, await StateOf(demo, "leila"));
        Assert.Equal(RecordState.Due, await StateOf(demo, "pilar"));
        Assert.Equal(RecordState.Expired, await StateOf(demo, "dmytro"));
        Assert.Equal(RecordState.Suspended, await StateOf(demo, "sione"));
        Assert.Equal(RecordState.Current, await StateOf(demo, "joao"));
        Assert.Null(await StateOf(demo, "amara"));
        Assert.Null(await StateOf(demo, "rania"));
    }

    [Fact]
    public async Task The_first_shop_has_at_least_six_people_whose_record_is_current()
    {
        var owner = await ActorOf(demo, "hollis");
        var column = Ok(await demo.Overview(overview => overview.WhoMayDoWhat(owner)));
        var standing = column.Rows.Select(row => row.Records[0]?.Standing).Where(known => known is { State: RecordState.Current }).ToList();
        Assert.InRange(standing.Count, 6, 20);
        Assert.Equal(standing.Count, standing.Select(known => known!.Until).Distinct().Count());
    }

    [Fact]
    public async Task The_newcomer_begins_with_the_lesson_and_the_one_who_passed_waits_to_be_observed()
    {
        Assert.IsType<PathStep.Read>(await Next("amara"));
        Assert.IsType<PathStep.BeObserved>(await Next("rania"));
        var examiner = await ActorOf(demo, "mateo");
        Assert.All(Ok(await demo.Runs(runs => runs.ToDo(examiner))), run => Assert.Equal("Rania Mansour", run.Name));

        async Task<PathStep?> Next(string userName)
        {
            var actor = await ActorOf(demo, userName);
            return Ok(await demo.Overview(overview => overview.WhatNext(actor, actor.Person)))[0].Next;
        }
    }

    [Fact]
    public async Task Everybody_of_the_list_signs_in_with_the_password_and_has_the_roles()
    {
        foreach (var person in DemoWorld.SignIns)
        {
            Assert.True(await demo.With<UserManager<Person>, bool>(async users =>
                await users.FindByNameAsync(person.UserName) is { HasOneTimePassword: false } found &&
                await users.CheckPasswordAsync(found, person.Password)), person.UserName);
            Assert.Equal(person.Roles.Order(), (await ActorOf(demo, person.UserName)).Roles.Order());
        }
    }

    [Fact]
    public async Task A_database_with_somebody_in_it_stays_as_it_is()
    {
        await using var world = await Create();
        Assert.False(await world.With<DemoWorld, bool>(made => made.Seed(Files)));
        Assert.Equal(2, await world.Db(db => db.Shops.CountAsync()));
    }

    [Fact]
    public async Task Broken_content_seeds_nothing()
    {
        await using var world = await Empty();
        Assert.False(await world.With<DemoWorld, bool>(made => made.Seed([new ContentFile("procedures/x.yaml", "nonsense")])));
        Assert.False(await world.Db(db => db.Users.AnyAsync()));
    }

    [Fact]
    public async Task The_folder_that_the_demo_was_made_from_is_served_without_a_new_publication() =>
        Assert.Equal(1, (await demo.One<Publisher>().Publish(Files)).Served);

    private static async Task<Actor> ActorOf(TestWorld world, string userName) =>
        await world.ActorOf(await world.Db(db => db.Users.Where(user => user.UserName == userName).Select(user => user.Id).SingleAsync()));

    private static async Task<RecordState?> StateOf(TestWorld world, string userName)
    {
        var actor = await ActorOf(world, userName);
        return Ok(await world.Records(records => records.Of(actor, actor.Person))).SingleOrDefault()?.Standing!.State;
    }
}

/// <summary>The demo, made once for tests that only look at it.</summary>
public sealed class SeededWorld : IAsyncLifetime
{
    public TestWorld World { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        World = await Empty();
        Assert.True(await World.With<DemoWorld, bool>(made => made.Seed(Files)));
        await World.One<Publisher>().Publish(Files);
    }

    public async ValueTask DisposeAsync() => await World.DisposeAsync();
}

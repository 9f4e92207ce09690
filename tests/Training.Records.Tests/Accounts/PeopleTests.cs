using Microsoft.AspNetCore.Identity;
using Training.Records.Accounts;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Accounts;

public sealed class PeopleTests
{
    [Fact]
    public async Task The_first_administrator_adds_themself_and_nobody_after_them()
    {
        await using var world = await Empty();
        Assert.True(await world.People(people => people.AwaitsFirstAdministrator()));
        var first = Ok(await world.People(people => people.AddFirstAdministrator("Ifeoma Adeyemi", "Ifeoma", "long enough to begin")));
        Assert.False(await world.People(people => people.AwaitsFirstAdministrator()));
        Assert.True((await world.ActorOf(first)).Is(Roles.Administrator));
        Refused(
            await world.People(people => people.AddFirstAdministrator("Somebody Else", "else", "long enough to begin")),
            "There is an administrator already; ask them to add you.");
    }

    [Fact]
    public async Task Two_who_would_be_first_at_once_make_one_administrator()
    {
        await using var world = await Empty();
        var both = await Task.WhenAll(Enumerable.Range(0, 2).Select(who => Task.Run(() =>
            world.People(people => people.AddFirstAdministrator("First", $"first{who}", "long enough to begin")))));
        Assert.Single(both, outcome => outcome.IsOk);
    }

    [Fact]
    public async Task A_short_password_is_refused_and_adds_nobody()
    {
        await using var world = await Empty();
        var short14 = await world.People(people => people.AddFirstAdministrator("Ifeoma Adeyemi", "ifeoma", "fourteen chars"));
        Assert.False(short14.IsOk);
        Assert.Contains("15", short14.Fault.Sentence, StringComparison.Ordinal);
        Assert.True(await world.People(people => people.AwaitsFirstAdministrator()));
    }

    [Fact]
    public async Task An_owner_adds_technicians_of_the_own_shop_alone()
    {
        await using var world = await Create();
        var added = Ok(await Add(world.Owner, new("Tama Ngata", "tama", world.Quillmoor, [Roles.Technician])));
        Assert.Equal(world.Quillmoor, (await world.ActorOf(added.Person)).Shop);
        Refused(
            await Add(world.Owner, new("Tama Two", "tama2", world.Quillmoor, [Roles.Technician, Roles.Owner])),
            "An owner adds technicians; an administrator adds everybody else.");
        NotFound(await Add(world.Owner, new("Tama Three", "tama3", world.Brackenhill, [Roles.Technician])));
        NotFound(await Add(world.Owner, new("Tama Four", "tama4", null, [Roles.Technician])));
        NotAllowed(await Add(world.Technician, new("Tama Five", "tama5", world.Quillmoor, [Roles.Technician])));

        Task<Sequencing.Outcome<AddedPerson, Sequencing.Refusal>> Add(Actor actor, NewPerson person) =>
            world.People(people => people.Add(actor, person));
    }

    [Theory]
    [InlineData("", "tama", Roles.Technician, true, "A name has 1 to 100 characters on one line.")]
    [InlineData("Tama\nNgata", "tama", Roles.Technician, true, "A name has 1 to 100 characters on one line.")]
    [InlineData("Tama", "t", Roles.Technician, true, "A name for signing in has 2 to 32 letters a to z, digits, dots or hyphens and begins with a letter.")]
    [InlineData("Tama", "tama ngata", Roles.Technician, true, "A name for signing in has 2 to 32 letters a to z, digits, dots or hyphens and begins with a letter.")]
    [InlineData("Tama", "amara", Roles.Technician, true, "Somebody signs in as amara already; choose another name.")]
    [InlineData("Tama", "AMARA", Roles.Technician, true, "Somebody signs in as amara already; choose another name.")]
    [InlineData("Tama", "tama", "king", true, "There is no role “king”.")]
    [InlineData("Tama", "tama", Roles.Technician, false, "A technician or an owner belongs to a shop; choose one.")]
    [InlineData("Tama", "tama", Roles.Owner, false, "A technician or an owner belongs to a shop; choose one.")]
    [InlineData("Tama", "tama", Roles.Trainer, true, "A trainer or an administrator is staff of the provider and belongs to no shop.")]
    [InlineData("Tama", "tama", Roles.Administrator, true, "A trainer or an administrator is staff of the provider and belongs to no shop.")]
    public async Task A_wrong_person_is_refused_with_the_reason(string name, string userName, string role, bool hasShop, string sentence)
    {
        await using var world = await Create();
        Refused(
            await world.People(people => people.Add(world.Administrator, new(name, userName, hasShop ? world.Quillmoor : null, [role]))),
            sentence);
    }

    [Fact]
    public async Task A_person_has_a_role_and_a_language()
    {
        await using var world = await Create();
        Refused(
            await world.People(people => people.Add(world.Administrator, new("Tama", "tama", world.Quillmoor, []))), "Choose at least one role.");
        Refused(
            await world.People(people => people.Add(world.Administrator, new("Tama", "tama", world.Quillmoor, [Roles.Technician], "klingon!"))),
            "“klingon!” is no language code such as en or es.");
        Refused(
            await world.People(people => people.ChooseLanguage(world.Technician, "<b>")), "“<b>” is no language code such as en or es.");
        Ok(await world.People(people => people.ChooseLanguage(world.Technician, "es")));
        Assert.Equal("es", Ok(await world.People(people => people.Look(world.Technician, world.Technician.Person))).Language);
    }

    [Theory]
    [InlineData("", "Europe/London", "A shop's name has 1 to 100 characters on one line.")]
    [InlineData("Quillmoor Coachworks", "Europe/London", "There is a shop called Quillmoor Coachworks already.")]
    [InlineData("New", "Europe/Atlantis", "There is no time zone “Europe/Atlantis”; write one such as Europe/London.")]
    public async Task A_wrong_shop_is_refused_with_the_reason(string name, string zone, string sentence)
    {
        await using var world = await Create();
        Refused(await world.People(people => people.AddShop(world.Administrator, name, zone)), sentence);
    }

    [Fact]
    public async Task Only_administrators_add_shops()
    {
        await using var world = await Create();
        NotAllowed(await world.People(people => people.AddShop(world.Owner, "New", "Europe/London")));
    }

    [Fact]
    public async Task A_one_time_password_signs_in_until_one_is_chosen()
    {
        await using var world = await Create();
        var given = Ok(await world.People(people => people.GiveOneTimePassword(world.Owner, world.Technician.Person)));
        Assert.Equal("amara", given.UserName);
        Assert.True(given.OneTimePassword.Length >= 15);
        Assert.True(await SignsIn(given.OneTimePassword));
        Assert.True(await IsOneTime());
        Refused(
            await world.People(people => people.ChoosePassword(world.Technician, given.OneTimePassword, given.OneTimePassword)),
            "The new password must not be the old one.");
        Assert.False((await world.People(people => people.ChoosePassword(world.Technician, "wrong", "a password of my own"))).IsOk);
        Ok(await world.People(people => people.ChoosePassword(world.Technician, given.OneTimePassword, "a password of my own")));
        Assert.False(await SignsIn(given.OneTimePassword));
        Assert.True(await SignsIn("a password of my own"));
        Assert.False(await IsOneTime());

        Task<bool> SignsIn(string password) => world.With<UserManager<Person>, bool>(async users =>
            await users.CheckPasswordAsync((await users.FindByNameAsync("amara"))!, password));
        Task<bool> IsOneTime() => world.With<UserManager<Person>, bool>(async users =>
            (await users.FindByNameAsync("amara"))!.HasOneTimePassword);
    }

    [Fact]
    public async Task An_owner_gives_no_password_to_another_owner_and_a_technician_to_nobody()
    {
        await using var world = await Create();
        Refused(
            await world.People(people => people.GiveOneTimePassword(world.Owner, world.Owner.Person)),
            "An owner gives passwords to technicians; ask an administrator.");
        NotAllowed(await world.People(people => people.GiveOneTimePassword(world.Technician, world.Colleague.Person)));
        NotFound(await world.People(people => people.GiveOneTimePassword(world.Owner, world.ForeignTechnician.Person)));
        Ok(await world.People(people => people.GiveOneTimePassword(world.Administrator, world.Owner.Person)));
    }

    [Fact]
    public async Task Staff_of_the_provider_see_everybody_and_a_shop_its_own()
    {
        await using var world = await Create();
        var all = Ok(await world.People(people => people.List(world.Examiner)));
        Assert.Contains(all, person => person.UserName == "amara");
        Assert.Contains(all, person => person.UserName == "kofi");
        var own = Ok(await world.People(people => people.List(world.Owner)));
        Assert.All(own, person => Assert.Equal(world.Quillmoor, person.Shop!.Id));
        NotAllowed(await world.People(people => people.List(world.Technician)));
        NotFound(await world.People(people => people.List(world.Owner, world.Brackenhill)));
        Assert.Equal(2, (await world.People(people => people.Shops(world.Examiner))).Count);
        Assert.Equal("Quillmoor Coachworks", Assert.Single(await world.People(people => people.Shops(world.Technician))).Name);
    }

    [Fact]
    public async Task A_technician_sees_themself_and_no_colleague()
    {
        await using var world = await Create();
        Assert.Equal("Amara Okafor", Ok(await world.People(people => people.Look(world.Technician, world.Technician.Person))).DisplayName);
        NotFound(await world.People(people => people.Look(world.Technician, world.Colleague.Person)));
    }

    [Fact]
    public async Task Nobody_is_nobody()
    {
        await using var world = await Create();
        Assert.Null(await world.People(people => people.ActorOf(new(Guid.NewGuid()))));
    }
}

using Training.Content;
using Training.Records.Accounts;
using Training.Records.Interchange;
using Training.Sequencing;

namespace Training.Records.Tests.Interchange;

public sealed class PeopleIntakeTests
{
    private static readonly string[] Languages = ["en", "es", "hi"];

    private const string Two = "name,sign-in,language\nNoor Aziz,noor.aziz,en\n\"Quispe, Rosa\",rosa.quispe,es\n";

    [Fact]
    public async Task A_sound_file_is_previewed_without_changing_anything_and_then_all_come_in()
    {
        await using var world = await TestWorld.Create();
        var preview = (await Preview(world, world.Owner, Two)).Value;
        Assert.Empty(preview.Problems);
        Assert.Equal(["Noor Aziz", "Quispe, Rosa"], preview.People.Select(person => person.Name));
        Assert.DoesNotContain("noor.aziz", await UserNames(world));

        var added = (await TakeIn(world, world.Owner, Two, preview.Hash)).Value;
        Assert.Equal(["noor.aziz", "rosa.quispe"], added.Select(person => person.UserName));
        Assert.Equal(2, added.Select(person => person.OneTimePassword).Distinct().Count());
        Assert.Contains("rosa.quispe", await UserNames(world));
    }

    [Fact]
    public async Task Every_problem_is_said_at_its_line_at_once()
    {
        await using var world = await TestWorld.Create();
        var preview = (await Preview(world, world.Owner,
            "sign-in;name\r\nnoor.aziz;Noor Aziz\r\nNOOR.AZIZ;Noor the Second\r\n;Nobody\r\nx;\r\nlong.enough;One;Two\r\n")).Value;
        Assert.Equal([3, 4, 5, 6], preview.Problems.Select(problem => problem.Line).Distinct().Order());
    }

    [Fact]
    public async Task All_that_is_wrong_on_one_line_is_said()
    {
        await using var world = await TestWorld.Create();
        var preview = (await Preview(world, world.Owner, "name,sign-in,language\n\a,b b,EN\n")).Value;
        Assert.Equal([2, 2, 2], preview.Problems.Select(problem => problem.Line));
    }

    [Theory]
    [InlineData("es", 0)]
    [InlineData("", 0)]
    [InlineData("xx", 1)]
    public async Task A_language_that_the_house_does_not_speak_is_a_problem(string language, int problems)
    {
        await using var world = await TestWorld.Create();
        var preview = (await Preview(world, world.Owner, $"name,sign-in,language\nNoor Aziz,noor.aziz,{language}\n")).Value;
        Assert.Equal(problems, preview.Problems.Count);
    }

    [Fact]
    public async Task A_line_is_counted_where_it_begins()
    {
        await using var world = await TestWorld.Create();
        var preview = (await Preview(world, world.Owner, "name,sign-in\nNoor Aziz,noor.aziz\n\n\"Rosa\nQuispe\",rosa.quispe\nX,\n")).Value;
        Assert.Equal([4, 6], preview.Problems.Select(problem => problem.Line).Distinct());
    }

    [Fact]
    public async Task A_namesake_is_remarked_on_and_comes_in()
    {
        await using var world = await TestWorld.Create();
        const string text = "name,sign-in\nNoor Aziz,noor.aziz\nnoor aziz,noor.the.second\n";
        var preview = (await Preview(world, world.Owner, text)).Value;
        Assert.Empty(preview.Problems);
        Assert.Equal([3], preview.Remarks.Select(remark => remark.Line));
        Assert.True((await TakeIn(world, world.Owner, text, preview.Hash)).IsOk);
        Assert.Equal([2, 3], (await Preview(world, world.Owner, text)).Value.Remarks.Select(remark => remark.Line));
    }

    [Fact]
    public async Task Who_is_there_already_is_a_problem()
    {
        await using var world = await TestWorld.Create();
        var taken = (await UserNames(world))[0];
        var preview = (await Preview(world, world.Owner, $"name,sign-in\nSomebody,{taken}\n")).Value;
        Assert.Contains(taken, Assert.Single(preview.Problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_one_problem_nobody_comes_in()
    {
        await using var world = await TestWorld.Create();
        var text = Two + "No Sign In,,\n";
        var preview = (await Preview(world, world.Owner, text)).Value;
        Assert.False((await TakeIn(world, world.Owner, text, preview.Hash)).IsOk);
        Assert.DoesNotContain("noor.aziz", await UserNames(world));
    }

    [Fact]
    public async Task Another_file_than_was_looked_at_is_refused()
    {
        await using var world = await TestWorld.Create();
        var preview = (await Preview(world, world.Owner, Two)).Value;
        Assert.False((await TakeIn(world, world.Owner, Two.Replace("Noor", "Nora", StringComparison.Ordinal), preview.Hash)).IsOk);
        // How the lines end is no other file: a browser's form ends them in its own way.
        Assert.True((await TakeIn(world, world.Owner, Two.ReplaceLineEndings("\r\n"), preview.Hash)).IsOk);
    }

    [Theory]
    [InlineData("")]
    [InlineData("name,sign-in\n")]
    [InlineData("name\nNoor Aziz\n")]
    [InlineData("name,sign-in,roles\nNoor Aziz,noor,administrator\n")]
    [InlineData("name,sign-in,name\nNoor Aziz,noor,Noor\n")]
    [InlineData("name,sign-in\n\"Noor\" Aziz,noor\n")]
    public void A_file_that_cannot_be_read_is_refused_with_a_sentence(string text) =>
        Assert.NotEqual("", PeopleFile.Read(text).Fault.Sentence);

    [Fact]
    public void A_file_with_a_byte_order_mark_tabs_and_columns_in_another_order_is_read()
    {
        var person = Assert.Single(PeopleFile.Read("\uFEFFlanguage\tSign-In\tNAME\r\nhi\tnoor.aziz\tNoor Aziz\r\n\r\n").Value.People);
        Assert.Equal(new PersonInFile(2, "Noor Aziz", "noor.aziz", "hi"), person);
    }

    [Fact]
    public async Task An_owner_takes_people_into_the_own_shop_alone_and_a_technician_nobody()
    {
        await using var world = await TestWorld.Create();
        Assert.Equal(Refused.NotFound, (await world.With<PeopleIntake, Outcome<PeoplePreview, Refusal>>(intake => intake.Preview(world.Owner, world.Brackenhill, Two, Languages))).Fault);
        Assert.Equal(Refused.NotAllowed, (await Preview(world, world.Technician, Two)).Fault);
        Assert.True((await world.With<PeopleIntake, Outcome<PeoplePreview, Refusal>>(intake => intake.Preview(world.Administrator, world.Brackenhill, Two, Languages))).IsOk);
    }

    private static Task<Outcome<PeoplePreview, Refusal>> Preview(TestWorld world, Actor actor, string text) =>
        world.With<PeopleIntake, Outcome<PeoplePreview, Refusal>>(intake => intake.Preview(actor, world.Quillmoor, text, Languages));

    private static Task<Outcome<IReadOnlyList<AddedPerson>, Refusal>> TakeIn(TestWorld world, Actor actor, string text, ContentHash hash) =>
        world.With<PeopleIntake, Outcome<IReadOnlyList<AddedPerson>, Refusal>>(intake => intake.TakeIn(actor, world.Quillmoor, text, hash, Languages));

    private static async Task<List<string>> UserNames(TestWorld world) =>
        [.. (await world.With<People, Outcome<IReadOnlyList<PersonView>, Refusal>>(people => people.List(world.Administrator))).Value.Select(person => person.UserName)];
}

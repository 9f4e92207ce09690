using Training.Content.Procedures;
using Training.Sequencing.Procedures;

namespace Training.Content.Tests.Procedures;

public sealed class ProcedureFileTests
{
    private const string Short = "id: p\ntitle: P\nrevision: 1\nsteps:\n  - { id: a, do: A }\n  - { id: b, do: B }\nrules:\n  - { id: r, first: a, then: b }\n";

    [Fact]
    public void To_grade_by_it_a_procedure_needs_no_reasons_and_no_name() =>
        Assert.NotNull(ProcedureFile.ReadGrader(new("somewhere.tmp", Short), null).Grader);

    [Fact]
    public void To_publish_it_both_reasons_and_the_name_are_asked_for() =>
        Assert.Equal(
            [(1, 5), (8, 5), (8, 5)],
            ProcedureFile.Check(new("procedures/q.yaml", Short)).Problems.Select(problem => (problem.Line, problem.Column)));

    [Fact]
    public void What_the_engine_finds_is_told_even_where_reasons_are_missing()
    {
        var loop = Short.Replace("first: a, then: b", "first: b, then: a", StringComparison.Ordinal);
        var problems = ProcedureFile.Check(new("procedures/p.yaml", loop)).Problems;
        Assert.True(problems.Count >= 3, string.Join('\n', problems));
    }

    [Theory]
    [InlineData("steps: []\n", "\"steps\" is an empty list")]
    [InlineData("steps: [{ id: a, do: A }, { id: b, do: B }]\nrules: [{ id: r, first: [], then: b }]\n", "\"first\" is an empty list")]
    [InlineData("steps: [{ id: a, do: A }, { id: b, do: B }]\nrules: [{ id: r, first: a, then: [] }]\n", "\"then\" is an empty list")]
    [InlineData("facts: { k: [on] }\nsteps: [{ id: a, do: A }]\nrules: [{ id: r, step: a, only-while: {} }]\n", "\"only-while\" is written as")]
    [InlineData("facts: { k: [] }\nsteps: [{ id: a, do: A }]\n", "needs a list of its values")]
    [InlineData("steps: [{ id: a, do: A, wait: [] }]\n", "\"wait\" must be true or false.")]
    public void What_must_name_something_is_not_empty_and_is_told_in_its_own_words(string rest, string why) =>
        Assert.Contains(why, Assert.Single(ProcedureFile.Read(new("p.yaml", "id: p\ntitle: P\nrevision: 1\n" + rest)).Problems).Sentence, StringComparison.Ordinal);

    [Fact]
    public void A_variant_that_is_not_there_is_told()
    {
        var reading = ProcedureFile.ReadGrader(new("p.yaml", Short), new VariantId("bus-l18"));
        Assert.Null(reading.Grader);
        Assert.Contains("bus-l18", Assert.Single(reading.Problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void JSON_gives_the_same_procedure_as_YAML()
    {
        const string json = """
            {"id":"p","title":"P","revision":1,
            	"steps":[{"id":"a","do":"A"},{"id":"b","do":"\u0042"}],
            	"rules":[{"id":"r","first":"a","then":["b"]}]}
            """;
        var (fromJson, fromYaml) = (ProcedureFile.Read(new("p", json)).Procedure!, ProcedureFile.Read(new("p", Short)).Procedure!);
        Assert.Equal(fromYaml.Steps.Select(step => step.Do), fromJson.Steps.Select(step => step.Do));
        Assert.Equal(((OrderRule)fromYaml.Rules[0]).Then, ((OrderRule)fromJson.Rules[0]).Then);
    }

    [Fact]
    public void Letters_beyond_the_basic_plane_survive_as_JSON_escapes() =>
        Assert.Equal("Key 🔑 off", ProcedureFile.Read(new("p", Short.Replace("do: A", "do: \"Key \\ud83d\\udd11 off\"", StringComparison.Ordinal))).Procedure!.Steps[0].Do);

    [Fact]
    public void A_bomb_of_aliases_is_refused_at_its_first_anchor()
    {
        var bomb = "a: &a [x, x]\n" + string.Concat(Enumerable.Range('b', 20).Select(c => $"{(char)c}: &{(char)c} [*{(char)(c - 1)}, *{(char)(c - 1)}]\n"));
        var problem = Assert.Single(ProcedureFile.Read(new("p.yaml", bomb)).Problems);
        Assert.Equal((1, 4), (problem.Line, problem.Column));
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("? ")]
    public void A_text_that_goes_down_without_end_is_refused(string down)
    {
        var text = string.Concat(Enumerable.Repeat(down, 1_000_000 / down.Length));
        Assert.Single(ProcedureFile.Read(new("p.yaml", text)).Problems);
    }

    [Fact]
    public void A_text_of_very_many_parts_is_refused()
    {
        var problem = Assert.Single(ProcedureFile.Read(new("p.yaml", "steps: [" + string.Concat(Enumerable.Repeat("a,", 400_000)) + "]")).Problems);
        Assert.Contains("too many parts", problem.Sentence, StringComparison.Ordinal);
    }
}

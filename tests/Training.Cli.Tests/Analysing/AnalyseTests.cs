using System.Globalization;
using System.Text.Json;

namespace Training.Cli.Tests.Analysing;

public sealed class AnalyseTests : CommandLine
{
    private const string Loop = """
        id: p
        title: P
        revision: 1
        steps:
          - { id: a, do: A }
          - { id: b, do: B }
        rules:
          - { id: r1, first: a, then: b }
          - { id: r2, first: b, then: a }
        """;

    private static string Tray => Path.Combine(Data, "good", "procedures", "change-relay-tray.yaml");

    [Fact]
    public void An_analysis_is_one_line_of_JSON_with_everything_of_the_contract()
    {
        var outcome = Run("analyse", Tray, "--variant", "crane");
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.Equal(
            """{"steps":5,"acceptedOrders":"2","exact":true,"low":"2","high":"2","guessChance":"""
            + (2.0 / 240).ToString("R", CultureInfo.InvariantCulture)
            + ""","redundantRules":["dead-tray"],"shortestSeconds":65,"problems":[]}""" + "\n",
            outcome.Output);
    }

    [Fact]
    public void Without_a_variant_the_first_kind_of_vehicle_is_taken() =>
        Assert.Equal(Run("analyse", Tray, "--variant", "crane").Output, Run("analyse", Tray).Output);

    [Fact]
    public void A_remark_has_its_place_and_is_no_fault()
    {
        var path = Write("p.yaml", "id: p\ntitle: P\nrevision: 1\nsteps:\n  - { id: a, do: A }\n  - { id: b, do: B, takes: 5 s }\n");
        var outcome = Run("analyse", path);
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        var json = JsonDocument.Parse(outcome.Output).RootElement;
        Assert.Equal(("2", 1), (json.GetProperty("acceptedOrders").GetString(), json.GetProperty("guessChance").GetDouble()));
        Assert.StartsWith($"{path}:5:5: remark: ", json.GetProperty("problems")[0].GetString(), StringComparison.Ordinal);
        Assert.StartsWith($"{path}:6:5: remark: ", json.GetProperty("problems")[1].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_procedure_that_is_undone_is_looked_for_beside()
    {
        Write("there.yaml", "id: there\ntitle: P\nrevision: 1\nsteps: [{ id: a, do: A }, { id: b, do: B }]\nrules: [{ id: r, first: a, then: b }]\n");
        var back = Write("back.yaml", "id: back\ntitle: P\nrevision: 1\nmirrors: there\npairs: { a: x, b: y }\nsteps: [{ id: y, do: Y }, { id: x, do: X }, { id: z, do: Z }]\nrules: [{ id: r, first: [x, y], then: z }]\n");
        var problem = Assert.Single(JsonDocument.Parse(Run("analyse", back).Output).RootElement.GetProperty("problems").EnumerateArray());
        Assert.StartsWith($"{back}:4:", problem.GetString(), StringComparison.Ordinal);
        File.Delete(Path.Combine(Folder, "there.yaml"));
        var alone = Run("analyse", back);
        var remark = Assert.Single(JsonDocument.Parse(alone.Output).RootElement.GetProperty("problems").EnumerateArray());
        Assert.Equal(ExitCode.Done, alone.Code);
        Assert.StartsWith($"{back}:4:10: remark: The procedure \"there\" is not there", remark.GetString(), StringComparison.Ordinal);
        Write("there.yaml", "id: there\n");
        Assert.Contains("cannot be read", Run("analyse", back).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ id: r, first: a, then: b, at-least: 5 s }", "null", "can fill it")]
    [InlineData("{ id: r, first: b, then: a }", "0", "listing is not a right order")]
    public void An_error_that_leaves_the_procedure_an_order_is_told_beside_the_counts(string rule, string shortest, string why)
    {
        var path = Write("p.yaml", $"id: p\ntitle: P\nrevision: 1\nsteps:\n  - {{ id: a, do: A }}\n  - {{ id: b, do: B }}\nrules:\n  - {rule}\n");
        var outcome = Run("analyse", path);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        var json = JsonDocument.Parse(Assert.Single(outcome.Lines)).RootElement;
        Assert.Equal(("1", shortest), (json.GetProperty("acceptedOrders").GetString(), json.GetProperty("shortestSeconds").GetRawText()));
        var problem = Assert.Single(json.GetProperty("problems").EnumerateArray()).GetString();
        Assert.StartsWith($"{path}:8:5: error: ", problem, StringComparison.Ordinal);
        Assert.Contains(why, problem, StringComparison.Ordinal);
        Assert.Equal(problem + "\n", outcome.Errors);
    }

    [Fact]
    public void A_dash_reads_the_procedure_from_standard_input()
    {
        Assert.Equal(Run("analyse", Tray).Output, RunWith(File.ReadAllText(Tray), "analyse", "-").Output);
        Assert.StartsWith("-:8:5: error: ", RunWith(Loop, "analyse", "-").Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Lists_with_nothing_in_them_are_as_good_as_none_and_a_group_of_one_is_a_remark()
    {
        var outcome = RunWith(
            """{"id":"p","title":"P","revision":1,"variants":[],"facts":{},"decoys":[],"rules":[],"mirrors":"q","pairs":{},"steps":[{"id":"a","do":"A","one-of":"g"}]}""",
            "analyse", "-");
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.Contains("remark: Step “a” is the only one of “g”", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Content_at_fault_is_told_on_standard_error()
    {
        var path = Write("p.yaml", Loop);
        var outcome = Run("analyse", path);
        Assert.Equal((ExitCode.AtFault, ""), (outcome.Code, outcome.Output));
        Assert.StartsWith($"{path}:8:5: error: ", outcome.Errors, StringComparison.Ordinal);
        Assert.Contains("circle", outcome.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--variant", "nonesuch")]
    public void A_kind_of_vehicle_that_the_procedure_does_not_know_is_a_fault(params string[] words) =>
        Assert.Equal(ExitCode.AtFault, Run(["analyse", Tray, .. words]).Code);

    [Fact]
    public void A_file_that_is_not_there_is_a_fault() => Assert.Equal(ExitCode.AtFault, Run("analyse", "nowhere.yaml").Code);

    [Fact]
    public void Every_conformance_case_has_as_many_right_orders_as_the_second_reading_says()
    {
        foreach (var line in File.ReadLines(Path.Combine(Data, "engine-conformance.jsonl")))
        {
            var one = JsonDocument.Parse(line).RootElement;
            var path = Write("case.yaml", one.GetProperty("procedure").GetRawText());
            string[] variant = one.GetProperty("variant").GetString() is { } name ? ["--variant", name] : [];
            var json = JsonDocument.Parse(Run(["analyse", path, .. variant]).Output).RootElement;
            Assert.True(json.GetProperty("exact").GetBoolean());
            Assert.Equal(one.GetProperty("acceptedOrders").GetString(), json.GetProperty("acceptedOrders").GetString());
        }
    }
}

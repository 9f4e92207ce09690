using Training.Content.Packing;
using Training.Content.Tests.Shipped;
using Training.Sequencing.Comparing;

namespace Training.Content.Tests.Packing;

/// <summary>What a pack would bring to the content that is here.</summary>
public sealed class PackIntakeTests
{
    private static readonly Pack Batteries = PackTests.Packed("03-batteries");

    [Fact]
    public void A_pack_of_what_is_here_brings_nothing()
    {
        var intake = PackIntake.Of(Batteries, ShippedContent.Files);
        Assert.Empty(intake.ToWrite);
        Assert.Empty(intake.WordsKept);
        Assert.DoesNotContain(intake.Problems, problem => problem.HoldsBack);
    }

    [Fact]
    public void A_pack_for_an_empty_house_brings_all_of_it()
    {
        var intake = PackIntake.Of(Batteries, []);
        Assert.Equal(Batteries.Files, intake.ToWrite);
        Assert.All(intake.Lines, line => Assert.Equal(ChangeKind.New, line.Comparison.Kind));
    }

    [Fact]
    public void What_differs_here_is_told_with_its_comparison()
    {
        var here = ShippedContent.Files.Select(file => file.Path == "competencies/batteries.yaml"
            ? file with { Text = file.Text.Replace("valid-for: P24M", "valid-for: P12M", StringComparison.Ordinal) } : file).ToArray();
        var line = Assert.Single(PackIntake.Of(Batteries, here).Lines, line => line.Comparison.Kind is not null);
        Assert.Equal("valid-for", Assert.Single(line.Comparison.Parts).Name);
    }

    [Fact]
    public void A_problem_that_the_pack_would_make_here_is_told_with_its_place()
    {
        var here = ShippedContent.Files.Where(file => !file.Path.StartsWith("procedures/remove-batteries", StringComparison.Ordinal)).ToArray();
        var pack = Batteries with { Files = [.. Batteries.Files.Where(file => !file.Path.StartsWith("procedures/remove-batteries", StringComparison.Ordinal))] };
        Assert.Contains(PackIntake.Of(pack, here).Problems, problem => problem.HoldsBack && problem.File == "competencies/batteries.yaml");
    }

    [Fact]
    public void Words_that_are_lacking_here_come_behind_ours_and_ours_stay_as_they_are()
    {
        var here = new ContentFile("glossary/en.yaml", "# Ours.\nterms:\n  - { id: acid, word: acid, meaning: Our own meaning. }\n");
        var intake = PackIntake.Of(Batteries, [here]);
        var line = Assert.Single(intake.Lines, line => line.File.Path == "glossary/en.yaml");
        Assert.StartsWith(here.Text, line.File.Text, StringComparison.Ordinal);
        Assert.Contains("id: battery", line.File.Text, StringComparison.Ordinal);
        Assert.All(line.Comparison.Parts, part => Assert.Equal(ChangeKind.New, part.Kind));
        Assert.Contains(intake.WordsKept, term => term.Id.Value == "acid");
    }
}

using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;

namespace Training.Content.Tests.Competencies;

/// <summary>No question of a paper shows what another asks, wherever that can be had.</summary>
public sealed class PaperChoiceTests
{
    private static readonly QuestionKind[] Showing = [QuestionKind.Finish, QuestionKind.FirstFault, QuestionKind.Next, QuestionKind.Wait, QuestionKind.WhatIf];

    [Fact]
    public void A_question_that_shows_a_part_of_an_order_tells_of_every_other_of_its_procedure()
    {
        foreach (var shown in Showing)
            foreach (var asked in Showing.Append(QuestionKind.Order))
            {
                Assert.True(Asked(shown, "a").TellsOf(Asked(asked, "a")), $"{shown}, {asked}");
                Assert.True(Asked(asked, "a").TellsOf(Asked(shown, "a")), $"{asked}, {shown}");
                Assert.False(Asked(shown, "a").TellsOf(Asked(asked, "b")));
            }
    }

    [Fact]
    public void Two_jobs_to_put_in_order_tell_of_each_other_only_where_they_offer_other_decoys()
    {
        Assert.False(Asked(QuestionKind.Order, "a").TellsOf(Asked(QuestionKind.Order, "a")));
        Assert.True(Asked(QuestionKind.Order, "a").TellsOf(Asked(QuestionKind.Order, "a") with { Decoys = "only hose" }));
    }

    [Fact]
    public void A_whole_order_tells_of_the_mirrors_to_be_put_in_order_or_finished_and_a_part_of_one_does_not()
    {
        foreach (var asked in new[] { QuestionKind.Order, QuestionKind.Finish })
        {
            var mirror = Asked(asked, "b") with { Mirrors = new ProcedureId("a") };
            Assert.True(Asked(QuestionKind.FirstFault, "a").TellsOf(mirror));
            Assert.True(mirror.TellsOf(Asked(QuestionKind.FirstFault, "a")));
            Assert.False(Asked(QuestionKind.Next, "a").TellsOf(mirror));
        }

        Assert.False(Asked(QuestionKind.FirstFault, "a").TellsOf(Asked(QuestionKind.WhatIf, "b") with { Mirrors = new ProcedureId("a") }));
    }

    [Fact]
    public void A_reading_tells_of_nothing()
    {
        var content = ContentReader.Read(ContentFolders.Good).Library!;
        var reading = PaperOffer.Of(QuestionKind.Reading, new("half-way"), content);
        Assert.False(reading.TellsOf(PaperOffer.Of(QuestionKind.Order, new("half-way"), content)));
        Assert.True(PaperOffer.Of(QuestionKind.Finish, new("half-way"), content).TellsOf(PaperOffer.Of(QuestionKind.Order, new("half-way"), content)));
    }

    [Fact]
    public void What_tells_of_another_is_not_taken_though_it_is_the_least_used()
    {
        PaperOffers[] lines = [new([Asked(QuestionKind.Order, "a"), Asked(QuestionKind.Order, "b")], 1), new([Asked(QuestionKind.Finish, "a")], 1)];
        var choice = PaperChoice.Of(lines, offer => offer.Procedure == new ProcedureId("b") ? 9 : 0);
        Assert.Equal(["b", "a"], choice.Asked.Select(offer => offer.Procedure!.Value.Value));
        Assert.Equal((0, true), (choice.Tells, choice.IsBest));
    }

    [Fact]
    public void Of_what_tells_of_nothing_the_least_used_is_taken_and_of_these_the_first()
    {
        PaperOffers[] lines = [new([.. "abcd".Select(id => Asked(QuestionKind.Order, $"{id}"))], 2)];
        Assert.Equal("bd", string.Concat(PaperChoice.Of(lines, offer => offer.Procedure!.Value.Value is "b" or "d" ? 0 : 1).Asked.Select(offer => offer.Procedure)));
        Assert.Equal("ab", string.Concat(PaperChoice.Of(lines).Asked.Select(offer => offer.Procedure)));
    }

    [Fact]
    public void Where_it_cannot_be_had_the_choice_that_tells_least_is_taken()
    {
        PaperOffers[] lines = [new([Asked(QuestionKind.Order, "a"), Asked(QuestionKind.Order, "b")], 1), new([Asked(QuestionKind.Finish, "a")], 1), new([Asked(QuestionKind.Next, "a"), Asked(QuestionKind.Next, "b")], 1)];
        Assert.Equal(1, PaperChoice.Of(lines).Tells);
    }

    [Fact]
    public void The_search_finds_what_trying_all_finds()
    {
        for (var seed = 1; seed <= 200; seed++)
        {
            var lots = new SeededDraw(seed);
            PaperOffers[] lines = [.. Enumerable.Range(0, 4).Select(_ => new PaperOffers(
                [.. Enumerable.Range(0, 3).Select(at => new PaperOffer(Showing.Append(QuestionKind.Order).ElementAt(lots.Below(6)), new($"s{at}"), new($"p{lots.Below(5)}"), "all"))], 1))];
            var uses = lines.SelectMany(line => line.From).Distinct().ToDictionary(offer => offer, _ => lots.Below(3));
            var least = (from one in lines[0].From
                         from two in lines[1].From
                         from three in lines[2].From
                         from four in lines[3].From
                         select Cost([one, two, three, four], uses)).Min();
            Assert.Equal(least, Cost(PaperChoice.Of(lines, offer => uses[offer]).Asked, uses));
        }
    }

    [Fact]
    public void No_paper_of_the_shipped_competencies_tells_of_itself_whatever_the_seed()
    {
        var content = Shipped.ShippedContent.Library;
        foreach (var competency in content.Competencies)
            for (var seed = 1; seed <= 200; seed++)
            {
                var lots = new SeededDraw(seed);
                var asked = PaperChoice.Of(competency.Paper.Questions.Select((draw, line) => new PaperOffers(
                    [.. lots.For(line).Shuffle(draw.From).Select(scenario => PaperOffer.Of(draw.Kind, scenario, content))], draw.Count)),
                    _ => lots.Below(4)).Asked;
                var shown = asked.Where(offer => Showing.Contains(offer.Kind)).Select(offer => content.FindScenario(offer.Scenario)!.Procedure).ToList();
                Assert.Equal(shown.Distinct(), shown);
                Assert.DoesNotContain(asked, offer => offer.Kind == QuestionKind.Order && shown.Contains(content.FindScenario(offer.Scenario)!.Procedure));
            }
    }

    [Fact]
    public void A_scenario_that_no_paper_can_ask_is_remarked_on()
    {
        const string path = "competencies/relay-work.yaml";
        var reading = ContentReader.Read(ContentFolders.With(path, ContentFolders.File(path).Text.Replace("finish, from: [half-refitted]", "finish, from: [half-refitted, half-way]", StringComparison.Ordinal)));
        Assert.StartsWith($"{path}:7:45: remark: The scenario \"half-way\" is never drawn", Assert.Single(reading.Problems).ToString(), StringComparison.Ordinal);
    }

    private static PaperOffer Asked(QuestionKind kind, string procedure) => new(kind, new($"of-{procedure}"), new ProcedureId(procedure), "all");

    private static (int Tells, int Uses) Cost(IReadOnlyList<PaperOffer> asked, Dictionary<PaperOffer, int> uses) => (
        asked.Index().Sum(one => asked.Take(one.Index).Count(other => other.TellsOf(one.Item))), asked.Sum(offer => uses[offer]));
}

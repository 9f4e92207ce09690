using CsCheck;
using Training.Content;
using Training.Content.Competencies;
using Training.Content.Scenarios;
using Training.Records.Results;

namespace Training.Records.Tests.Results;

/// <summary>Figures from sums are those from the answers themselves.</summary>
public sealed class PaperFiguresTests
{
    private static readonly ContentHash Hash = ContentHash.Of("a text");

    private static readonly Gen<bool[][]> Papers = Gen.Int[2, 6].SelectMany(questions => Gen.Bool.Array[questions].Array[5, 30]);

    [Fact]
    public void The_sums_give_the_reliability_that_the_answers_give() => Papers.Sample(papers =>
    {
        var (figures, oracle) = (Figures(papers), ItemAnalysis.Of(papers));
        Assert.Equal(papers.Length, figures.Passed.Whole);
        Close(oracle.Reliability, figures.Reliability);
        Close(oracle.ErrorOfMeasurement, figures.ErrorOfMeasurement, 1e-6);
    });

    [Fact]
    public void The_sums_give_the_facility_and_the_discrimination_that_the_answers_give() => Papers.Sample(papers =>
    {
        var (figures, oracle) = (Figures(papers), ItemAnalysis.Of(papers));
        Assert.Equal(oracle.Items.Count, figures.Items.Count);
        foreach (var (place, item) in oracle.Items.Index())
        {
            var mine = figures.Items.Single(one => one.Part.Keys.Single().Scenario == Scenario(place));
            Assert.Equal(item.Facility, mine.Part.Share.Value!.Value, 1e-9);
            Close(item.WithRest, mine.Discrimination);
        }
    });

    [Fact]
    public void Papers_whose_questions_all_go_together_have_no_error_of_measurement_and_not_the_root_of_a_negative_number()
    {
        bool[][] papers = [[false, false], [false, false], [true, true], [false, false], [true, true]];
        Assert.Equal(1, Figures(papers).Reliability!.Value, 9);
        Assert.Equal(0, Figures(papers).ErrorOfMeasurement!.Value, 6);
        Assert.Equal(0, ItemAnalysis.Of(papers).ErrorOfMeasurement!.Value, 6);
    }

    [Fact]
    public void Four_papers_are_not_shown() => Assert.Null(PaperFigures.Of(Sheets(Enumerable.Repeat(new[] { true, false }, 4)).Papers[Hash], []));

    [Fact]
    public void A_question_that_four_people_were_asked_is_put_together_with_another_one()
    {
        var sheets = new PaperSheets();
        foreach (var number in Enumerable.Range(0, 12))
            sheets.Add(new(new("c"), Hash, true, [(QuestionKind.Order, Scenario(number < 4 ? 1 : 2), true), (QuestionKind.Finish, Scenario(3), false)]));
        var figures = PaperFigures.Of(sheets.Papers[Hash], sheets.Items.Values)!;
        var together = figures.Items.Single(item => item.Part.Keys.Count == 2);
        Assert.Equal(12, together.Part.Share.Whole);
        Assert.Null(together.Discrimination);
    }

    private static ScenarioId Scenario(int number) => new($"s{number}");

    // A root of nearly nothing keeps half the digits.
    private static void Close(double? expected, double? actual, double within = 1e-9)
    {
        Assert.Equal(expected is null, actual is null);
        if (expected is { } known) Assert.Equal(known, actual!.Value, within);
    }

    private static PaperSheets Sheets(IEnumerable<bool[]> papers)
    {
        var sheets = new PaperSheets();
        foreach (var paper in papers)
            sheets.Add(new(new CompetencyId("c"), Hash, true, [.. paper.Select((right, place) => (QuestionKind.Order, Scenario(place), right))]));
        return sheets;
    }

    private static PaperFigures Figures(bool[][] papers)
    {
        var sheets = Sheets(papers);
        return PaperFigures.Of(sheets.Papers[Hash], sheets.Items.Values)!;
    }
}

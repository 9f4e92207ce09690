using Training.Records.Results;

namespace Training.Records.Tests.Results;

public sealed class ItemAnalysisTests
{
    // Wuensch, East Carolina University, KR20.txt: ten students, ten questions; Σpq 2.18 and variance 5.84 are printed there.
    private static readonly ItemAnalysis Wuensch = Of(
        "1111110110 1011011101 1111011001 0010001000 0000010010 1110111111 1101110111 1111111101 0101111101 1101101110");

    [Fact]
    public void Facility_is_the_share_of_right_answers() =>
        Assert.Equal([.7, .7, .6, .7, .6, .8, .7, .7, .5, .6], Wuensch.Items.Select(item => Math.Round(item.Facility, 6)));

    [Fact]
    public void Reliability_follows_from_the_printed_sum_and_variance()
    {
        Assert.Equal(10.0 / 9 * (1 - 2.18 / 5.84), Wuensch.Reliability!.Value, 10);
        Assert.Equal(0.6963, Wuensch.Reliability!.Value, 4);
        Assert.Equal(1.3317, Wuensch.ErrorOfMeasurement!.Value, 4);
    }

    // Recomputed by a second program from the same table.
    [Theory]
    [InlineData(1, .7946, .7059)]
    [InlineData(3, .2027, .0000)]
    [InlineData(4, .6140, .4736)]
    [InlineData(5, .7095, .5839)]
    [InlineData(6, .4345, .2861)]
    [InlineData(7, .1625, -.0274)]
    [InlineData(9, .0828, -.1236)]
    [InlineData(10, .6251, .4759)]
    public void Discrimination_is_the_point_biserial_correlation(int question, double withTotal, double withRest)
    {
        var figures = Wuensch.Items[question - 1];
        Assert.Equal(withTotal, figures.WithTotal!.Value, 4);
        Assert.Equal(withRest, figures.WithRest!.Value, 4);
    }

    [Fact]
    public void A_second_table_has_the_facilities_that_are_printed_beside_it()
    {
        // An item-analysis worksheet with ten students, printed difficulties; its KR-20 recomputed by a second program.
        var worksheet = Of(
            "1111111111 1111111101 1101111100 0111110101 1110111001 1110110100 0110110101 0111001010 1110100001 0100010010");
        Assert.Equal([.6, 1.0, .8, .5, .8, .8, .5, .6, .3, .6], worksheet.Items.Select(item => Math.Round(item.Facility, 6)));
        Assert.Equal(0.5297, worksheet.Reliability!.Value, 4);
    }

    [Fact]
    public void A_question_that_all_answer_alike_discriminates_nothing() =>
        Assert.Null(Of("11 10 11").Items[0].WithTotal);

    [Fact]
    public void There_is_no_reliability_where_all_have_the_same_total() => Assert.Null(Of("10 01 10").Reliability);

    [Fact]
    public void No_papers_say_nothing() => Assert.Empty(ItemAnalysis.Of([]).Items);

    [Fact]
    public void Papers_of_different_length_cannot_be_compared() => Assert.Throws<ArgumentException>(() => Of("10 101"));

    private static ItemAnalysis Of(string papers) =>
        ItemAnalysis.Of([.. papers.Split(' ').Select(IReadOnlyList<bool> (paper) => [.. paper.Select(answer => answer == '1')])]);
}

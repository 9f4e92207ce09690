using Training.Records.Results;

namespace Training.Records.Tests.Results;

public sealed class ShareTests
{
    // The cases of Newcombe, Statistics in Medicine 17 (1998) 857–872, Table I; limits recomputed by a second program.
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    [InlineData(23, 60, 0.2709, 0.5098)]
    [InlineData(10, 10, 0.7225, 1)]
    [InlineData(9, 10, 0.5958, 0.9821)]
    [InlineData(18, 20, 0.6990, 0.9721)]
    public void The_interval_of_Wilson_is_that_of_the_published_cases(int part, int whole, double low, double high)
    {
        var interval = new Share(part, whole).Interval();
        Assert.Equal(low, interval.Low, 4);
        Assert.Equal(high, interval.High, 4);
    }

    [Fact]
    public void The_interval_of_a_difference_is_that_of_the_published_case_from_memory()
    {
        // Newcombe, Statistics in Medicine 17 (1998) 873–890, 56/70 against 48/80 by method 10.
        var interval = new Share(56, 70).Less(new(48, 80))!.Value;
        Assert.Equal(0.0524, interval.Low, 4);
        Assert.Equal(0.3339, interval.High, 4);
    }

    [Fact]
    public void A_share_lies_in_its_own_interval() =>
        Assert.All(Enumerable.Range(0, 41), part => Assert.True(new Share(part, 40).Interval().Holds(part / 40.0)));

    [Fact]
    public void More_answers_give_a_narrower_interval()
    {
        var (few, many) = (new Share(3, 10).Interval(), new Share(300, 1000).Interval());
        Assert.True(many.High - many.Low < (few.High - few.Low) / 5);
    }

    [Fact]
    public void A_share_of_none_says_nothing()
    {
        Assert.Null(new Share(0, 0).Value);
        Assert.Equal(new Interval(0, 1), new Share(0, 0).Interval());
        Assert.Null(new Share(0, 0).Less(new(1, 2)));
    }

    [Fact]
    public void More_than_all_is_no_share() => Assert.Throws<ArgumentOutOfRangeException>(() => new Share(3, 2));
}

using Training.Records.Results;

namespace Training.Records.Tests.Results;

public sealed class AgreementTests
{
    [Fact]
    public void Kappa_is_that_of_a_worked_example_from_memory()
    {
        // A widely taught example, source not looked up: 20 both yes, 5 only the first, 10 only the second, 15 both no.
        var agreement = Agreement.Of(Judgements(20, 5, 10, 15));
        Assert.Equal(new Share(35, 50), agreement.Observed);
        Assert.Equal(0.5, agreement.Expected, 10);
        Assert.Equal(0.4, agreement.Kappa!.Value, 10);
    }

    [Fact]
    public void Who_always_agree_have_one() => Assert.Equal(1, Agreement.Of(Judgements(6, 0, 0, 4)).Kappa!.Value, 10);

    [Fact]
    public void Who_agree_as_often_as_chance_have_none() => Assert.Equal(0, Agreement.Of(Judgements(5, 5, 5, 5)).Kappa!.Value, 10);

    [Fact]
    public void Who_never_agree_are_below_chance() => Assert.True(Agreement.Of(Judgements(0, 5, 5, 0)).Kappa < 0);

    [Fact]
    public void One_judgement_for_all_says_nothing_about_agreement() => Assert.Null(Agreement.Of(Judgements(9, 0, 0, 0)).Kappa);

    [Fact]
    public void Kappa_lies_in_its_interval_which_more_pairs_narrow()
    {
        var (few, many) = (Agreement.Of(Judgements(20, 5, 10, 15)).Interval()!.Value, Agreement.Of(Judgements(200, 50, 100, 150)).Interval()!.Value);
        Assert.True(few.Holds(0.4) && many.Holds(0.4));
        Assert.True(many.High - many.Low < few.High - few.Low);
    }

    private static List<(bool, bool)> Judgements(int bothYes, int onlyFirst, int onlySecond, int bothNo) =>
        [.. Enumerable.Repeat((true, true), bothYes), .. Enumerable.Repeat((true, false), onlyFirst),
            .. Enumerable.Repeat((false, true), onlySecond), .. Enumerable.Repeat((false, false), bothNo)];
}

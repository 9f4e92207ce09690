using System.Globalization;
using CsCheck;
using Training.Measures.Readings;

namespace Training.Measures.Tests.Readings;

public class ReadingQuestionTests
{
    private static readonly Dictionary<string, string> NoChoice = [];

    private static readonly DecisionTable FitFrom75 = new([new("charge", 75), new("fit")]);

    private static ReadingQuestion Rest(decimal from, decimal to, decimal division = 0, DecisionTable? table = null) =>
        ReadingQuestion.Of(
            "charge-from-voltage", NoChoice, [InputRange.Steps("voltage", from, to, 0.01m, "V", division)], table).Value;

    private static string Typed(DrawnReading reading, double value)
    {
        var unit = reading.Measure.Answer.Kind.Units.First(each => each.Symbol == reading.Measure.Answer.Unit);
        return unit.FromBase(value).ToString("0.##########", CultureInfo.InvariantCulture);
    }

    [Fact]
    public void Every_measure_can_be_asked()
    {
        Assert.True(Measure.All.Count >= 14);
        Assert.Equal(Measure.All.Count, Measure.All.Select(measure => measure.Id).Distinct().Count());
        Assert.Equal(Measure.All.Count, Questions.All.Select(question => question.Measure.Id).Distinct().Count());
    }

    [Fact]
    public void The_same_seed_gives_the_same_reading() =>
        Gen.ULong.Sample(seed =>
        {
            foreach (var question in Questions.All)
            {
                var (one, other) = (question.Draw(Bits.From(seed)), question.Draw(Bits.From(seed)));
                Assert.Equal(one.Value, other.Value);
                Assert.Equal(one.Inputs.Select(input => input.Number), other.Inputs.Select(input => input.Number));
            }
        }, iter: 30);

    [Fact]
    public void The_true_value_is_right_and_one_well_off_is_wrong() =>
        Gen.ULong.Sample(seed =>
        {
            foreach (var reading in Questions.All.Select(question => question.Draw(Bits.From(seed))))
            {
                Assert.True(reading.Judge(Typed(reading, reading.Value)).Value.IsRight);
                var off = reading.Value + reading.Tolerance * 1.5 + reading.Measure.Answer.Kind.Highest * 1e-12
                    + 1e-6 * (1 + reading.Value);
                Assert.False(reading.Judge(Typed(reading, off)).Value.IsRight);
            }
        }, iter: 30);

    [Fact]
    public void Every_number_of_a_range_is_drawn()
    {
        var question = Rest(12.00m, 12.09m);
        var bits = Bits.From(1);
        var drawn = Enumerable.Range(0, 400).Select(_ => question.Draw(bits).Inputs[0].Number).Distinct().Order();
        Assert.Equal(Enumerable.Range(0, 10).Select(step => 12.00m + step / 100m), drawn);
    }

    [Fact]
    public void The_greatest_bits_draw_the_last_number() =>
        Assert.Equal(12.09m, Rest(12.00m, 12.09m).Draw(() => ulong.MaxValue).Inputs[0].Number);

    // A stated number leaves one division of the answer; a scale adds what half its division makes of the result.
    // TM 5-3805-262-20: 25 % for 0.2 V, so half of 0.1 V is 6.25 %.
    [Fact]
    public void The_tolerance_comes_from_the_instruments()
    {
        Assert.Equal(1, Rest(12.3m, 12.3m).Draw(() => 0).Tolerance, 1e-9);
        Assert.Equal(1 + 6.25, Rest(12.3m, 12.3m, 0.1m).Draw(() => 0).Tolerance, 1e-9);
    }

    // The two published corrections give 1.248 and 1.2467 for 1.240 at 100 °F: the question names its rule.
    [Fact]
    public void The_value_of_the_other_rule_is_not_right()
    {
        var question = ReadingQuestion.Of(
            "corrected-gravity", new Dictionary<string, string> { ["correction"] = "by-ten" },
            [InputRange.Steps("gravity", 1.240m, 1.240m, 1), InputRange.Steps("electrolyte", 100, 100, 1, "°F")]).Value;
        var reading = question.Draw(() => 0);
        Assert.True(reading.Judge("1,248").Value.IsRight);
        Assert.True(reading.Judge("1248").Value.IsRight);
        Assert.False(reading.Judge("1.2467").Value.IsRight);
        Assert.False(reading.Judge("1.240").Value.IsRight);
    }

    [Fact]
    public void The_decision_is_judged_by_the_true_value_and_by_the_technicians_own()
    {
        var reading = Rest(12.20m, 12.20m, 0, FitFrom75).Draw(() => 0);
        Assert.Equal(new ReadingVerdict(50, true, true, true), reading.Judge("50 %", "charge").Value);
        Assert.Equal(new ReadingVerdict(50, true, false, false), reading.Judge("50", "fit").Value);
        Assert.Equal(new ReadingVerdict(90, false, false, true), reading.Judge("90", "fit").Value);
        Assert.Equal(new ReadingVerdict(90, false, true, false), reading.Judge("90", "charge").Value);
    }

    [Theory]
    [InlineData("fifty", "charge")]
    [InlineData("50 V", "charge")]
    [InlineData("", "charge")]
    [InlineData("50 %", null)]
    [InlineData("50 %", "burn")]
    public void An_answer_that_cannot_be_read_is_not_judged(string typed, string? decision) =>
        Assert.False(Rest(12.20m, 12.20m, 0, FitFrom75).Draw(() => 0).Judge(typed, decision).IsOk);

    [Fact]
    public void A_reading_between_two_decisions_is_drawn_again_and_else_allows_both()
    {
        var range = Rest(12.30m, 12.50m, 0.02m, FitFrom75);
        var bits = Bits.From(7);
        for (var draw = 0; draw < 300; draw++)
            Assert.Single(range.Draw(bits).Decisions);
        Assert.Equal(["charge", "fit"], Rest(12.40m, 12.40m, 0.02m, FitFrom75).Draw(bits).Decisions);
        Assert.Equal(["fit"], Rest(12.40m, 12.40m, 0, FitFrom75).Draw(bits).Decisions);
    }

    [Fact]
    public void A_limit_belongs_to_the_band_that_says_so()
    {
        var upTo = new DecisionTable([new("good", 0.003, true), new("clean", 0.005), new("renew")]);
        Assert.Equal("good", upTo.For(0.1 + 0.2 - 0.297));
        Assert.Equal("clean", upTo.For(0.0031));
        Assert.Equal("renew", upTo.For(0.005));
        Assert.Equal(["good", "clean", "renew"], upTo.Between(0, 1));
    }

    [Fact]
    public void A_question_that_cannot_work_is_refused_with_a_sentence()
    {
        InputRange good = InputRange.Steps("voltage", 12, 12.8m, 0.1m);
        IEnumerable<Outcome<ReadingQuestion>> wrong =
        [
            ReadingQuestion.Of("weather", NoChoice, [good]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, []),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [good, good]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [good, InputRange.Steps("mood", 1, 2, 1)]),
            ReadingQuestion.Of("charge-from-voltage", new Dictionary<string, string> { ["x"] = "y" }, [good]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.Steps("voltage", 12, 11, 0.1m)]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.Steps("voltage", 12, 13, 0)]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.Steps("voltage", 12, 13, 0.00001m)]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.Steps("voltage", 12, 13, 0.1m, "A")]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.Steps("voltage", 12, 13, 0.1m, "V", -1)]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.Steps("voltage", 12, 24, 0.1m)]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [InputRange.OneOf("voltage", [])]),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [good], null, -1),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [good], new([new("fit")])),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [good], new([new("a", 80), new("b", 70), new("c")])),
            ReadingQuestion.Of("charge-from-voltage", NoChoice, [good], new([new("a", 80), new("b", 90)])),
            ReadingQuestion.Of("corrected-gravity", new Dictionary<string, string> { ["correction"] = "both" },
                [InputRange.Steps("gravity", 1.2m, 1.2m, 1), InputRange.Steps("electrolyte", 20, 20, 1)]),
        ];
        Assert.All(wrong, question => Assert.EndsWith(".", question.Objection.Sentence, StringComparison.Ordinal));
    }

    // A list is tried from end to end, in whatever order an author wrote it: 20 V stands in the middle here.
    [Fact]
    public void A_list_is_tried_whatever_its_order() =>
        Assert.False(ReadingQuestion.Of(
            "charge-from-voltage", NoChoice, [InputRange.OneOf("voltage", [12.4m, 20, 12.0m])]).IsOk);

    [Fact]
    public void A_list_that_is_tried_at_its_ends_is_tried_at_its_extremes()
    {
        InputRange[] ranges =
        [
            InputRange.OneOf("gravity", [1.20m, 1.02m, 1.28m]), InputRange.OneOf("standing", [10, 40, 20]),
            InputRange.Steps("store", 10, 10, 1),
        ];
        Assert.False(ReadingQuestion.Of("stored-gravity", NoChoice, ranges).IsOk);
    }

    [Fact]
    public void A_cross_section_that_the_table_lacks_is_found_before_anyone_draws_it()
    {
        var question = ReadingQuestion.Of(
            "conductor-resistance",
            new Dictionary<string, string> { ["basis"] = "iec-plain", ["temperature-rule"] = "from-230" },
            [
                InputRange.Steps("length", 1, 2, 1), InputRange.Steps("section", 4, 6, 1),
                InputRange.Steps("copper", 20, 20, 1),
            ]);
        Assert.Contains("5", question.Objection.Sentence, StringComparison.Ordinal);
    }
}

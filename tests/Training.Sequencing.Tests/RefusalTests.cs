using Training.Sequencing.Answers;

namespace Training.Sequencing.Tests;

/// <summary>Answers that are not graded at all.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData("key-off nonsense", "Place 2 of the answer: this procedure has no step “nonsense”.")]
    [InlineData("key-off KEY-OFF", "Place 2 of the answer: this procedure has no step “KEY-OFF”.")]
    [InlineData("key-off:5", "Place 1 of the answer: a time is stated for “key-off”, which is not a wait.")]
    [InlineData("hose:5", "Place 1 of the answer: a time is stated for “hose”, which is not a wait.")]
    [InlineData("nonsense |", "Place 1 of the start: this procedure has no step “nonsense”.")]
    public void An_answer_that_cannot_be_meant_is_refused_with_its_place(string answer, string sentence) =>
        Assert.Equal(sentence, Sample.RelayTray.Refused(Sample.Answer(answer)));

    [Fact]
    public void An_id_without_text_is_refused() =>
        Assert.Contains("no step", Sample.RelayTray.Refused(new([new(default)])), StringComparison.Ordinal);

    [Fact]
    public void A_huge_answer_is_refused() =>
        Assert.Contains("at most 10000", Sample.RelayTray.Refused(
            new([.. Enumerable.Repeat(new Entry(Sample.Id("hose")), 10_001)])), StringComparison.Ordinal);

    [Fact]
    public void An_answer_of_the_greatest_length_and_the_longest_waits_is_graded()
    {
        var wait = new Entry(Sample.Id("rest")) { Stated = Procedures.Duration.Longest };
        var verdict = Sample.RelayTray.Grader().Grade(new([.. Enumerable.Repeat(wait, 10_000)])).Value;
        Assert.Equal(1, verdict.Kept);
        Assert.Equal(9_999, verdict.Mend.Drop.Count);
    }
}

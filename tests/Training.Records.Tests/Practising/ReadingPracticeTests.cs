using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Practising;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Practising;

/// <summary>Readings are drawn from the seed, judged with the tolerance of their scales and explained by the sum.</summary>
public sealed class ReadingPracticeTests
{
    private const string Text =
        """
        ---
        title: A ground under load
        module: 01-trays
        kinds: [reading]
        reading:
          measure: ground-resistance
          inputs:
            drop: { from: 20, to: 90, step: 10, unit: mV, division: 1, on: multimeter }
            current: { one-of: [10], division: 0.1, on: clamp-meter }
          decide:
            - { do: Leave it, up-to: 5 mΩ, because: It is good, otherwise: It burns somebody, harm: people, severity: serious }
            - { do: Clean it, because: It is bad, otherwise: Work for nothing, severity: minor }
          sources:
            - { name: A handbook, where: page 1, kind: published }
        ---
        Measure the ground.
        """;

    private static readonly ScenarioId Ground = new("ground");

    [Fact]
    public async Task A_reading_shows_its_instruments_and_nothing_of_its_value()
    {
        await using var world = await World();
        var asked = await Draw(world, 1);
        var reading = asked.Question.Reading!;
        Assert.Equal([Instrument.Multimeter, Instrument.ClampMeter], reading.Inputs.Select(input => input.On));
        Assert.Equal(["Leave it", "Clean it"], reading.Decisions.Select(decision => decision.Text));
        Assert.Equal("mΩ", reading.Answer.Unit);
        Assert.Equal(reading.Inputs.Select(input => input.Input), (await Draw(world, 1)).Question.Reading!.Inputs.Select(input => input.Input));
    }

    [Theory]
    [InlineData("{0} mΩ")]
    [InlineData("{0},0 mΩ")]
    [InlineData("0.00{0} Ω")]
    [InlineData("{0}")]
    public async Task A_right_value_may_be_typed_with_comma_or_point_and_in_any_unit(string typed)
    {
        await using var world = await World();
        var asked = await Draw(world, 1);
        var milliohms = asked.Question.Reading!.Inputs[0].Input.Number / 10;
        var judged = await HandIn(world, asked, string.Format(System.Globalization.CultureInfo.InvariantCulture, typed, milliohms), milliohms <= 5 ? "1" : "2");
        Assert.True(judged.Accepted);
        Assert.Equal((100m, true), (judged.Score, judged.Safe));
        Assert.NotEmpty(judged.Found.Working.Lines);
        Assert.All(judged.Found.Working.Lines, line => Assert.NotEmpty(line.Source.Name));
    }

    [Fact]
    public async Task To_leave_what_should_be_mended_is_unsafe_where_its_author_says_that_it_hurts_people()
    {
        await using var world = await World();
        var asked = await Until(world, number => number > 60);
        var judged = await HandIn(world, asked, $"{asked.Question.Reading!.Inputs[0].Input.Number / 10:0} mΩ", "1");
        Assert.Equal((50m, false, "It burns somebody"), (judged.Score, judged.Safe, judged.Found.Otherwise));
        Assert.Equal(["It is bad"], judged.Found.Because);
    }

    [Fact]
    public async Task A_wrong_value_with_the_decision_that_follows_from_it_is_told_so()
    {
        await using var world = await World();
        var asked = await Until(world, number => number < 40);
        var judged = await HandIn(world, asked, "8 mΩ", "2");
        Assert.False(judged.Found.IsValueRight);
        Assert.True(judged.Found.DecisionFollows);
        Assert.Equal((0m, true), (judged.Score, judged.Safe));
    }

    [Theory]
    [InlineData("{\"value\":\"12 V\",\"decision\":\"1\"}", "“V” is not a unit")]
    [InlineData("{\"value\":\"2 mΩ\",\"decision\":\"7\"}", "This question has no decision “7”.")]
    [InlineData("{\"value\":\"2 mΩ\"}", "Say what is to be done")]
    [InlineData("{\"value\":\"\",\"decision\":\"1\"}", "Write down the value")]
    [InlineData("{\"chosen\":[\"1\"]}", "The answer to this question is a value and a decision.")]
    public async Task What_cannot_be_read_is_refused_with_a_sentence(string answer, string sentence)
    {
        await using var world = await World();
        var asked = await Draw(world, 1);
        var refused = await world.Practice(practice => practice.HandIn(world.Technician, new(Guid.NewGuid(), asked.Ticket, answer)));
        Assert.False(refused.IsOk);
        Assert.StartsWith(sentence, refused.Fault.Sentence, StringComparison.Ordinal);
    }

    private static async Task<TestWorld> World()
    {
        var world = await Create();
        var state = await world.One<Publisher>().Publish([.. Files, new ContentFile("scenarios/ground.md", Text)]);
        Assert.False(state.IsHeldBack, string.Join('\n', state.Problems));
        return world;
    }

    private static async Task<PracticeQuestion> Draw(TestWorld world, long seed) =>
        Ok(await world.Practice(practice => practice.Draw(world.Technician, Ground, QuestionKind.Reading, seed)));

    private static async Task<PracticeQuestion> Until(TestWorld world, Func<decimal, bool> fits)
    {
        for (var seed = 1; ; seed++)
            if (await Draw(world, seed) is var asked && fits(asked.Question.Reading!.Inputs[0].Input.Number)) return asked;
    }

    private static async Task<JudgedReadingView> HandIn(TestWorld world, PracticeQuestion asked, string value, string decision) =>
        (JudgedReadingView)Ok(await world.Practice(practice => practice.HandIn(
            world.Technician, new(Guid.NewGuid(), asked.Ticket, TypedReading.Write(new(value, decision)))))).Judged;
}

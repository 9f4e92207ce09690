using CsCheck;
using Training.Sequencing.Json;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;

namespace Training.Web.Tests.Features.Shared;

/// <summary>The answer sheet as it is posted.</summary>
public sealed class AnswerFormTests
{
    private static readonly IReadOnlyList<OfferedStep> Offered =
        [new(new("a"), "Turn the key off", false), new(new("b"), "Wait", true), new(new("c"), "Lift the tray", false)];

    [Fact]
    public void A_tap_on_something_on_offer_puts_it_last() =>
        Assert.Equal(["a", "b", "c"], Ids(Form("place:c", ("a", ""), ("b", "30"))));

    [Fact]
    public void A_second_tap_takes_it_back() => Assert.Equal(["b"], Ids(Form("back:a", ("a", ""), ("b", "30"))));

    [Fact]
    public void The_same_tap_sent_twice_places_it_once() => Assert.Equal(["a", "b"], Ids(Form("place:a", ("a", ""), ("b", ""))));

    [Theory]
    [InlineData("up:2", "b,a,c")]
    [InlineData("down:2", "a,c,b")]
    [InlineData("up:1", "a,b,c")]
    [InlineData("down:3", "a,b,c")]
    [InlineData("up:0", "a,b,c")]
    [InlineData("up:-1", "a,b,c")]
    [InlineData("down:999999999999", "a,b,c")]
    [InlineData("", "a,b,c")]
    [InlineData("up", "a,b,c")]
    [InlineData("away:1", "a,b,c")]
    public void A_move_changes_places_with_the_neighbour_and_nonsense_changes_nothing(string change, string after) =>
        Assert.Equal(after.Split(','), Ids(Form(change, ("a", ""), ("b", "30"), ("c", ""))));

    [Fact]
    public void What_was_typed_as_time_moves_along_with_its_step() =>
        Assert.Equal("30", Form("up:2", ("a", ""), ("b", "30")).Placed()[0].Seconds);

    [Fact]
    public void No_change_ever_loses_or_doubles_a_step() =>
        Gen.Select(Gen.Bool.Select(up => up ? "up" : "down"), Gen.Int[-3, 12], Gen.Int[0, 10]).Sample((verb, place, count) =>
        {
            var rows = Enumerable.Range(0, count).Select(row => ($"s{row}", "")).ToArray();
            Assert.Equal(rows.Select(row => row.Item1).Order(), Ids(Form($"{verb}:{place}", rows)).Order());
        });

    [Fact]
    public void More_entries_than_a_sheet_can_hold_are_not_read() =>
        Assert.Equal(AnswerForm.MostEntries, Form(null, [.. Enumerable.Range(0, 500).Select(row => ($"s{row}", ""))]).Placed().Count);

    [Theory]
    [InlineData("90", 90)]
    [InlineData(" 90 ", 90)]
    [InlineData("1.5", 1.5)]
    [InlineData("1,5", 1.5)]
    [InlineData("0", 0)]
    public void A_time_is_read_with_a_point_or_a_comma(string typed, double seconds) =>
        Assert.Equal((decimal)seconds, Read(("b", typed)).Value.Entries[0].Stated?.Seconds);

    [Theory]
    [InlineData("soon")]
    [InlineData("-5")]
    [InlineData("1e9")]
    [InlineData("90 s")]
    [InlineData("1,000,000")]
    [InlineData("NaN")]
    [InlineData("99999999999")]
    public void A_time_that_is_no_number_of_seconds_is_refused_with_the_step_and_its_place(string typed)
    {
        var refused = Read(("a", ""), ("b", typed));
        Assert.False(refused.IsOk);
        Assert.Contains("“Wait”, place 2", refused.Fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wait_without_a_time_states_none() => Assert.Null(Read(("b", " ")).Value.Entries[0].Stated);

    [Fact]
    public void What_was_saved_is_shown_again_as_it_was() =>
        Gen.Decimal[0, 100_000].Select(seconds => Math.Round(seconds, 3)).Sample(seconds =>
        {
            var placed = new[] { new PlacedStep(new("a")), new PlacedStep(new("b"), seconds.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)) };
            Assert.Equal(placed, AnswerForm.Saved(AnswerJson.Write(AnswerForm.Read(placed, Offered).Value)));
        });

    [Fact]
    public void Nothing_saved_and_nothing_readable_are_an_empty_sheet()
    {
        Assert.Empty(AnswerForm.Saved(null));
        Assert.Empty(AnswerForm.Saved("{"));
    }

    private static Training.Sequencing.Outcome<Training.Sequencing.Answers.Answer, Training.Sequencing.Refusal> Read(params (string, string)[] rows) =>
        AnswerForm.Read(Form(null, rows).Placed(), Offered);

    private static AnswerForm Form(string? change, params (string Id, string Seconds)[] rows) => new()
    {
        Step = [.. rows.Select(row => row.Id)],
        Seconds = [.. rows.Select(row => row.Seconds)],
        Change = change,
    };

    private static string[] Ids(AnswerForm form) => [.. form.Placed().Select(step => step.Id.Value)];
}

using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Tests.Mending;

public sealed class MendTests
{
    [Fact]
    public void One_step_out_of_place_is_one_move_and_goes_as_near_as_the_rules_allow()
    {
        var procedure = Sample.Plain("abcdef").With(Sample.Order("r", "a", "d"), Sample.Order("q", "d", "e"));
        var verdict = procedure.Grade("d b c a e f");
        Assert.Equal(1, verdict.Cost);
        Assert.Single(verdict.Mend.Moves);
        Assert.True(procedure.Grade(verdict.Nearest.Short()).Accepted);
    }

    [Fact]
    public void A_step_that_moves_back_goes_no_further_than_behind_what_must_come_first()
    {
        var procedure = Sample.Plain("abcde").With(Sample.Order("r", ["a", "b"], ["c"]));
        Assert.Equal("a b c d e", procedure.Grade("c a b d e").Nearest.Short());
    }

    [Fact]
    public void A_step_that_moves_forward_goes_no_further_than_before_what_must_come_after()
    {
        var procedure = Sample.Plain("abcde").With(Sample.Order("r", ["c"], ["d", "e"]));
        Assert.Equal("a b c d e", procedure.Grade("a b d e c").Nearest.Short());
    }

    [Fact]
    public void A_missing_step_is_added_at_its_place_in_the_listing()
    {
        var procedure = Sample.Plain("abcd").With(Sample.Order("r", "a", "b"));
        Assert.Equal("a b c d", procedure.Grade("a b d").Nearest.Short());
        Assert.Equal("a b d c", procedure.Grade("b d c").Nearest.Short());
    }

    [Fact]
    public void A_short_wait_is_told_with_the_length_that_it_needs()
    {
        var verdict = Sample.RelayTray.Grade("key-off rest:20 lift-tray hook");
        Assert.Equal([new Wait(Sample.Id("rest"), Sample.Seconds(60))], verdict.Mend.Waits);
        Assert.Equal("key-off rest:60 lift-tray hook", verdict.Nearest.Short());
        Assert.Equal(4, verdict.Kept);
        Assert.Equal(75m, verdict.Score);
    }

    [Fact]
    public void A_missing_wait_is_added_with_the_length_that_it_needs()
    {
        var verdict = Sample.RelayTray.Grade("key-off lift-tray hook");
        Assert.Equal([Sample.Id("rest")], verdict.Mend.Add);
        Assert.Equal("key-off rest:60 lift-tray hook", verdict.Nearest.Short());
    }

    [Fact]
    public void Two_gaps_that_share_a_wait_are_filled_by_the_longer_one()
    {
        var procedure = Sample.Plain("abwcd").With("w", step => step with { IsWait = true }).With(
            Sample.Order("aw", ["a", "b"], ["w"]), Sample.Order("wc", ["w"], ["c", "d"]),
            Sample.Order("g1", "a", "c") with { AtLeast = Sample.Seconds(30) },
            Sample.Order("g2", "b", "d") with { AtLeast = Sample.Seconds(50) });
        var verdict = procedure.Grade("a b w c d");
        Assert.Equal([new Wait(Sample.Id("w"), Sample.Seconds(50))], verdict.Mend.Waits);
        Assert.Equal(60m, verdict.Score);
    }

    [Fact]
    public void What_is_missing_goes_to_the_last_wait_inside_the_gap_so_that_later_gaps_share_it()
    {
        var procedure = Sample.Plain("avbwcd")
            .With("v", step => step with { IsWait = true }).With("w", step => step with { IsWait = true })
            .With(Sample.Order("1", "a", "v"), Sample.Order("2", "v", "b"), Sample.Order("3", "b", "w"),
                Sample.Order("4", ["w"], ["c", "d"]),
                Sample.Order("g1", "a", "c") with { AtLeast = Sample.Seconds(30) },
                Sample.Order("g2", "b", "d") with { AtLeast = Sample.Seconds(30) });
        Assert.Equal([new Wait(Sample.Id("w"), Sample.Seconds(30))], procedure.Grade("a v b w c d").Mend.Waits);
    }

    [Fact]
    public void An_empty_answer_is_mended_to_a_right_order()
    {
        var verdict = Sample.RelayTray.Grade("");
        Assert.Equal(0m, verdict.Score);
        Assert.Equal("key-off rest:60 lift-tray hook", verdict.Nearest.Short());
    }

    [Fact]
    public void A_thousand_steps_in_reverse_keep_one()
    {
        var ids = Enumerable.Range(0, 1000).Select(n => $"s{n}").ToArray();
        var procedure = Sample.Plain("") with
        {
            Steps = [.. ids.Select(id => new Procedures.Step(Sample.Id(id), "Do"))],
            Rules = [.. ids.Zip(ids.Skip(1), (a, b) => Sample.Order(a + b, a, b))],
        };
        var verdict = procedure.Grade(string.Join(' ', ids.Reverse()));
        Assert.Equal(1, verdict.Kept);
        Assert.Equal(999, verdict.Mend.Moves.Count);
        Assert.Equal(string.Join(' ', ids), verdict.Nearest.Short());
    }
}

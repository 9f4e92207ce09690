using CsCheck;
using Training.Records.Results;

namespace Training.Records.Tests.Results;

/// <summary>Groups that are too small are not shown, and not found by subtraction either.</summary>
public sealed class SmallGroupsTests
{
    private static readonly Gen<List<(int Key, Share Share)>> Groups = Gen.Int[0, 12].SelectMany(whole => Gen.Int[0, whole]
        .Select(part => new Share(part, whole))).List[0, 9].Select(shares => shares.Select((share, key) => (key, share)).ToList());

    [Fact]
    public void Every_part_and_every_difference_of_parts_is_of_five_people_at_least() => Both(
        (groups, parts) =>
        {
            var everybody = groups.Sum(group => group.Share.Whole);
            if (parts.Count > 0) Assert.Equal(everybody, parts.Sum(part => part.Share.Whole));
            var all = 1 << parts.Count;
            long Of(int some) => parts.Where((_, at) => (some >> at & 1) != 0).Sum(part => part.Share.Whole);
            for (var larger = 0; larger < all; larger++)
                for (var smaller = 0; smaller < all; smaller++)
                    if ((smaller & ~larger) == 0 && smaller != larger) Assert.True(Of(larger) - Of(smaller) >= SmallGroups.Fewest);
        });

    [Fact]
    public void The_parts_are_a_division_of_everybody_or_there_are_fewer_than_five() => Both(
        (groups, parts) =>
        {
            var some = groups.Where(group => group.Share.Whole > 0).ToList();
            if (parts.Count == 0)
            {
                Assert.True(some.Sum(group => group.Share.Whole) < SmallGroups.Fewest);
                return;
            }

            Assert.Equal(some.Select(group => group.Key), parts.SelectMany(part => part.Keys).Order());
            Assert.Equal(some.Sum(group => group.Share.Part), parts.Sum(part => part.Share.Part));
        });

    [Fact]
    public void A_group_stands_alone_just_where_the_parts_say_so() => Groups.Sample(groups =>
    {
        var parts = SmallGroups.Apart(groups);
        // Beside the groups that are looked at stands another thing, which must not disturb.
        var lone = new LoneGroups(2);
        foreach (var (key, share) in groups) lone.Add(key, key % 2 == 0 ? [(int)share.Whole] : [(int)share.Whole, 7]);
        foreach (var (key, share) in groups)
            Assert.Equal(
                share.Whole >= SmallGroups.Fewest && parts.Any(part => part.Keys is [var alone] && alone == key), lone.IsAlone(key, 0, share.Whole));
    });

    [Fact]
    public void A_small_shop_is_put_together_with_the_smallest_of_the_others() => Assert.Equal(
        ["a: 3/20", "c+b: 4/9"],
        Told(SmallGroups.Apart([("a", new Share(3, 20)), ("b", new Share(3, 6)), ("c", new Share(1, 3))])));

    [Fact]
    public void Two_small_shops_that_are_enough_together_leave_the_others_alone() => Assert.Equal(
        ["b: 3/6", "a+c: 2/5"],
        Told(SmallGroups.Apart([("a", new Share(1, 2)), ("b", new Share(3, 6)), ("c", new Share(1, 3))])));

    [Fact]
    public void Months_are_put_together_with_their_neighbours() => Assert.Equal(
        ["a+b: 2/6", "c+d: 3/9"],
        Told(SmallGroups.InOrder([("a", new Share(1, 3)), ("b", new Share(1, 3)), ("c", new Share(2, 5)), ("d", new Share(1, 4))])));

    [Fact]
    public void Four_people_are_not_shown_at_all()
    {
        Assert.Empty(SmallGroups.Apart([("a", new Share(1, 2)), ("b", new Share(1, 2))]));
        Assert.Empty(SmallGroups.InOrder([("a", new Share(1, 4))]));
    }

    private static IEnumerable<string> Told(IEnumerable<Part<string>> parts) =>
        parts.Select(part => $"{string.Join('+', part.Keys)}: {part.Share.Part}/{part.Share.Whole}");

    private static void Both(Action<List<(int Key, Share Share)>, IReadOnlyList<Part<int>>> holds) => Groups.Sample(groups =>
    {
        holds(groups, SmallGroups.Apart(groups));
        holds(groups, SmallGroups.InOrder(groups));
    });
}

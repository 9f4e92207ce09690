using CsCheck;
using Training.Sequencing.Drawing;

namespace Training.Sequencing.Tests.Drawing;

public sealed class SeededDrawTests
{
    [Fact]
    public void The_generator_gives_the_published_numbers_of_xoshiro256_starstar()
    {
        // State 1, 2, 3, 4: the test vector of the Rust implementation (rand_xoshiro), made with the authors' C code
        // at https://prng.di.unimi.it/xoshiro256starstar.c.
        var lots = new SeededDraw(1, 2, 3, 4);
        ulong[] expected = [11520, 0, 1509978240, 1215971899390074240];
        Assert.Equal(expected, Enumerable.Range(0, 4).Select(_ => lots.Next()));
    }

    [Fact]
    public void The_state_is_filled_by_the_published_numbers_of_SplitMix64()
    {
        // Seed 1234567, as https://rosettacode.org/wiki/Pseudo-random_numbers/Splitmix64 gives it.
        var state = 1234567UL;
        ulong[] expected = [6457827717110365317, 3203168211198807973, 9817491932198370423];
        Assert.Equal(expected, Enumerable.Range(0, 3).Select(_ => SeededDraw.SplitMix(ref state)));
    }

    [Fact]
    public void A_seed_gives_the_same_lots_for_ever()
    {
        // Papers were drawn from these: a change here would draw other papers from their seeds.
        string[] steps = ["a", "b", "c", "d", "e", "f", "g", "h"];
        Assert.Equal(Frozen, $"{string.Concat(new SeededDraw(42).Shuffle(steps))} {string.Concat(new SeededDraw(42).For(3).Choose(steps, 4))}");
    }

    private const string Frozen = "gchaefdb fabc";

    [Fact]
    public void A_shuffle_has_every_item_once() => Gen.Select(Gen.Long, Gen.Int.Array[0, 40]).Sample((seed, items) =>
        new SeededDraw(seed).Shuffle(items).Order().SequenceEqual(items.Order()));

    [Fact]
    public void A_choice_has_as_many_different_items_as_wanted() => Gen.Select(Gen.Long, Gen.Int[0, 40], Gen.Int[0, 40]).Sample((seed, size, wanted) =>
    {
        var count = Math.Min(size, wanted);
        var chosen = new SeededDraw(seed).Choose([.. Enumerable.Range(0, size)], count);
        return chosen.Count == count && chosen.Distinct().Count() == count && chosen.All(item => item < size);
    });

    [Fact]
    public void A_part_of_its_own_is_drawn_the_same_whatever_was_drawn_before() => Gen.Select(Gen.Long, Gen.Int[0, 2000], Gen.Int[0, 20])
        .Sample((seed, part, before) =>
        {
            var lots = new SeededDraw(seed);
            for (var draw = 0; draw < before; draw++) lots.Next();
            return lots.For(part).Next() == new SeededDraw(seed).For(part).Next();
        });

    [Fact]
    public void Every_order_of_four_items_is_about_as_likely_as_the_others()
    {
        // 24 orders, 48 000 shuffles from fixed seeds: chi-squared with 23 degrees of freedom is below 49.7 in 99.9 % of
        // fair cases (NIST/SEMATECH e-Handbook of Statistical Methods, §1.3.6.7.4).
        const int Shuffles = 48_000;
        var counts = Enumerable.Range(0, Shuffles).CountBy(seed => string.Concat(new SeededDraw(seed).Shuffle<char>([.. "abcd"])))
            .Select(of => (double)of.Value).ToList();
        Assert.Equal(24, counts.Count);
        const double Expected = Shuffles / 24.0;
        Assert.InRange(counts.Sum(count => (count - Expected) * (count - Expected) / Expected), 0, 49.7);
    }

    [Fact]
    public void No_number_is_drawn_below_nothing() => Assert.Throws<ArgumentOutOfRangeException>(() => new SeededDraw(1).Below(0));

    [Fact]
    public void No_more_is_chosen_than_there_is() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeededDraw(1).Choose([1, 2], 3));
}

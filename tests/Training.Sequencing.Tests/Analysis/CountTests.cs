using System.Globalization;
using System.Numerics;
using System.Text.Json;
using Training.Sequencing.Analysis;
using Training.Sequencing.Procedures;
using Training.Sequencing.Tests.Conformance;

namespace Training.Sequencing.Tests.Analysis;

/// <summary>The number of right orders against numbers that others have found.</summary>
public sealed class CountTests
{
    /// <summary>
    /// <c>Data/linear-extension-counts.jsonl</c>: random posets of 10 to 40 elements, counted by the public C++ program
    /// of Kangas, Hankala, Niinimäki and Koivisto ("Counting linear extensions of sparse posets", IJCAI 2016).
    /// </summary>
    public static TheoryData<string> Counted => [.. Lines.Keys];

    public static TheoryData<string> Cases => ConformanceTests.Cases;

    private static Dictionary<string, JsonElement> Lines { get; } = File
        .ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "linear-extension-counts.jsonl"))
        .Select(line => JsonDocument.Parse(line).RootElement)
        .ToDictionary(line => $"{line.GetProperty("family").GetString()} {line.GetProperty("n").GetInt32()}");

    public static (int Size, (int, int)[] Pairs, BigInteger Count) CountedPoset(string name) => (
        Lines[name].GetProperty("n").GetInt32(),
        [.. Lines[name].GetProperty("pairs").EnumerateArray().Select(pair => (pair[0].GetInt32(), pair[1].GetInt32()))],
        BigInteger.Parse(Lines[name].GetProperty("count").GetString()!, CultureInfo.InvariantCulture));

    [Fact]
    public void There_are_twenty_four_counted_posets() => Assert.Equal(24, Lines.Count);

    [Theory]
    [MemberData(nameof(Counted))]
    public void A_random_poset_has_as_many_orders_as_the_published_program_counts(string name)
    {
        var (size, pairs, count) = CountedPoset(name);
        Assert.Equal(count, Posets.Count(size, pairs));
    }

    [Fact]
    public void The_posets_of_up_to_five_named_steps_have_as_many_orders_in_all_as_there_are_natural_labellings()
    {
        // n! times OEIS A006455 (1, 1, 2, 7, 40, 357); the numbers of posets are A001035.
        int[] posets = [1, 3, 19, 219, 4231];
        int[] orders = [1, 4, 42, 960, 42840];
        for (var size = 1; size <= 5; size++)
        {
            var all = Posets.All(size).ToArray();
            Assert.Equal(posets[size - 1], all.Length);
            Assert.Equal(orders[size - 1], all.Aggregate(BigInteger.Zero, (sum, poset) => sum + Posets.Count(poset.Item1, poset.Item2)));
        }
    }

    [Fact]
    public void The_posets_of_four_named_steps_have_these_numbers_of_orders()
    {
        // Computed by enumeration, twice and independently.
        var histogram = Posets.All(4).GroupBy(poset => Posets.Count(poset.Item1, poset.Item2))
            .OrderBy(group => group.Key).Select(group => $"{group.Key}:{group.Count()}");
        Assert.Equal("1:24 2:36 3:48 4:30 5:24 6:20 8:24 12:12 24:1", string.Join(' ', histogram));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    [InlineData(3, 48)]
    [InlineData(4, 1680384)]
    public void Subsets_by_inclusion(int of, int count) =>
        // OEIS A046873.
        Assert.Equal(count, Count(Posets.Subsets(of)));

    [Fact]
    public void Grids_have_as_many_orders_as_the_hook_length_formula_says()
    {
        // J. S. Frame, G. de B. Robinson and R. M. Thrall, "The hook graphs of the symmetric group", 1954:
        // (mn)! by the product of the hook lengths. The printed values are OEIS A060854 and A000108.
        for (var rows = 1; rows <= 5; rows++)
            for (var columns = rows; columns <= 6; columns++)
                Assert.Equal(HookFormula(rows, columns), Count(Posets.Grid(rows, columns)));
        Assert.Equal(1430, Count(Posets.Grid(2, 8)));
        Assert.Equal(23371634, Count(Posets.Grid(3, 8)));
        Assert.Equal(13672405890, Count(Posets.Grid(4, 7)));
        Assert.Equal(701149020, Count(Posets.Grid(5, 5)));
    }

    [Fact]
    public void Fences_have_as_many_orders_as_the_zigzag_numbers()
    {
        // Euler's zigzag numbers, OEIS A000111.
        int[] zigzag = [1, 1, 2, 5, 16, 61, 272, 1385, 7936, 50521, 353792, 2702765];
        for (var size = 1; size <= zigzag.Length; size++) Assert.Equal(zigzag[size - 1], Count(Posets.Fence(size)));
    }

    [Fact]
    public void Crowns()
    {
        // Computed by two independent programs.
        int[] counts = [6, 48, 720, 17280, 604800];
        for (var half = 2; half <= 6; half++) Assert.Equal(counts[half - 2], Count(Posets.Crown(half)));
    }

    [Fact]
    public void Forests_have_as_many_orders_as_the_hook_formula_says()
    {
        // n! by the product of the sizes of all subtrees: D. E. Knuth, The Art of Computer Programming 3, 5.1.4.
        Assert.Equal(80, Count(Posets.Tree(7)));
        Assert.Equal(21964800, Count(Posets.Tree(15)));
        Assert.Equal(120, Count(Posets.Order(6, (a, b) => a == 0 && b > 0)));
    }

    [Fact]
    public void Separate_chains_are_interleaved_in_as_many_ways_as_the_multinomial_says()
    {
        Assert.Equal(20, Count(Posets.Chains(3, 3)));
        Assert.Equal(90, Count(Posets.Chains(2, 2, 2)));
        Assert.Equal(1680, Count(Posets.Chains(3, 3, 3)));
    }

    [Fact]
    public void The_order_of_steps_without_rules_is_any()
    {
        Assert.Equal(BigInteger.Parse("30414093201713378043612608166064768844377641568960512000000000000", CultureInfo.InvariantCulture), Count(Posets.Chains([.. Enumerable.Repeat(1, 50)])));
        Assert.Equal(1, Count(Posets.Chains(300)));
    }

    [Fact]
    public void A_job_of_more_than_64_steps_is_counted_too()
    {
        // 50 crowns of four steps one behind the other, and a step that may be done at any time: 6^50 · 201.
        var joined = Posets.Order(201, (a, b) => a < 200 && b < 200
            && (a / 4 < b / 4 || (a / 4 == b / 4 && a % 4 < 2 && b % 4 >= 2 && (b % 4) - 2 != a % 4)));
        Assert.Equal(BigInteger.Pow(6, 50) * 201, Count(joined));
        Assert.Equal(HookFormula(2, 40), Count(Posets.Grid(2, 40)));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_conformance_case_has_as_many_orders_as_the_second_reading_says(string id)
    {
        var (procedure, variant, count) = ConformanceTests.CountOf(id);
        var report = ProcedureAnalysis.Of(Grader.For(procedure, variant).Value);
        Assert.True(report.Accepted.IsExact);
        Assert.Equal(count, report.Accepted.Count.ToString(CultureInfo.InvariantCulture));
    }

    private static BigInteger Count((int Size, (int, int)[] Pairs) poset) => Posets.Count(poset.Size, poset.Pairs);

    private static BigInteger HookFormula(int rows, int columns)
    {
        var (all, hooks) = (BigInteger.One, BigInteger.One);
        for (var cell = 0; cell < rows * columns; cell++)
        {
            all *= cell + 1;
            hooks *= rows - (cell / columns) + columns - (cell % columns) - 1;
        }

        return all / hooks;
    }
}

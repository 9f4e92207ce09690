using System.Globalization;
using CsCheck;
using Training.Measures.Conductors;
using Training.Measures.Quantities;
using Training.Measures.Sources;
using Training.Measures.Tests.Readings;
using Training.Measures.Workings;

namespace Training.Measures.Tests.Workings;

public class WorkingTests
{
    [Fact]
    public void Every_line_of_every_sum_is_true_as_it_is_written() =>
        Gen.ULong.Sample(seed =>
        {
            var lines = Questions.All.SelectMany(question => question.Draw(Bits.From(seed)).Working.Lines).ToList();
            Assert.NotEmpty(lines);
            foreach (var line in lines.Where(line => line.Formula.Length > 0))
                Assert.Equal(line.Result.Value, Sum.Of(line), 1e-6 * (1 + Math.Abs(line.Result.Value)));
        }, iter: 50);

    [Fact]
    public void The_last_line_of_every_sum_is_the_answer() =>
        Gen.ULong.Sample(seed =>
        {
            foreach (var reading in Questions.All.Select(question => question.Draw(Bits.From(seed))))
            {
                var last = reading.Working.Lines[^1].Result;
                var unit = reading.Measure.Answer.Kind.Units.First(each => each.Symbol == last.Unit);
                Assert.Equal(reading.Value, unit.ToBase(last.Value), 1e-9);
            }
        }, iter: 30);

    [Fact]
    public void Every_line_says_what_it_finds_and_where_it_comes_from() =>
        Assert.All(
            Questions.All.SelectMany(question => question.Draw(Bits.From(1)).Working.Lines),
            line => Assert.True(line.Says.ToString().Length > 0 && line.Source.Name.Length > 0));

    // AC 43.13-1B and IEC 60228; the sum as a lesson shows it.
    [Fact]
    public void A_sum_reads_as_on_paper()
    {
        var run = new CableRun(
            Length.FromMetres(2), CrossSection.FromSquareMillimetres(25), Temperature.FromCelsius(60));
        var lines = VoltageDrop.Along(
            run, ResistanceBasis.Computed, CopperTemperature.From234, Current.FromAmperes(100)).Value.Working.Lines;
        Assert.Equal(
            [
                "1000 × 0.017241\u00A0Ω·mm²/m × 2\u00A0m ÷ 25\u00A0mm² = 1.379\u00A0mΩ",
                "1.379\u00A0mΩ × ( 234.5 + 60\u00A0°C ) ÷ ( 234.5 + 20 ) = 1.596\u00A0mΩ",
                "100\u00A0A × 1.596\u00A0mΩ = 159.6\u00A0mV",
            ],
            lines.Select(line => line.Numbers(CultureInfo.InvariantCulture)));
        Assert.Equal("U = I × R", lines[^1].Letters);
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.00036, "0.00036")]
    [InlineData(27.6, "27.6")]
    [InlineData(159.5773, "159.6")]
    [InlineData(12345.6, "12346")]
    public void Numbers_are_rounded_for_print_alone(double value, string printed) =>
        Assert.Equal(printed, new Term("x", value, "").Print(CultureInfo.InvariantCulture));

    [Fact]
    public void Words_from_memory_are_never_called_published()
    {
        Assert.EndsWith("(from memory)", Documents.EightyPercent.ToString(), StringComparison.Ordinal);
        Assert.Contains("no published source", Documents.BetweenRows.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("(", Documents.ChargeByGravity.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_ground_floor_stands_on_the_base_library_alone() =>
        Assert.All(
            typeof(Voltage).Assembly.GetReferencedAssemblies(),
            name => Assert.StartsWith("System", name.Name, StringComparison.Ordinal));
}

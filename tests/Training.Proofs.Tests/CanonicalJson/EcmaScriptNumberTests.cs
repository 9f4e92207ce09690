using System.Globalization;
using CsCheck;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Tests.CanonicalJson;

public class EcmaScriptNumberTests
{
    // The first five: reference test data of RFC 8785. The others: RFC 8785, appendix B, from memory; each was
    // confirmed with another program's shortest digits.
    [Theory]
    [InlineData(0x4340000000000001, "9007199254740994")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x8000000000000001, "-5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x44b52d02c7e14af7, "1.0000000000000001e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555554, "333333333.33333325")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    [InlineData(0x41b3de4355555556, "333333333.3333334")]
    [InlineData(0x41b3de4355555557, "333333333.33333343")]
    [InlineData(0xbecbf647612f3696, "-0.0000033333333333333333")]
    [InlineData(0x43143ff3c1cb0959, "1424953923781206.2")]
    public void A_double_is_written_as_ECMAScript_writes_it(ulong bits, string text) =>
        Assert.Equal(text, EcmaScriptNumber.Format(BitConverter.UInt64BitsToDouble(bits)));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void A_number_that_is_not_finite_has_no_text(double number) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EcmaScriptNumber.Format(number));

    [Fact]
    public void The_text_reads_back_as_the_same_double() =>
        FiniteDoubles.Sample(number =>
            double.Parse(EcmaScriptNumber.Format(number), CultureInfo.InvariantCulture) == number);

    [Fact]
    public void No_text_with_fewer_digits_reads_back_as_the_same_double() =>
        FiniteDoubles.Where(number => number != 0).Sample(number =>
        {
            int digits = EcmaScriptNumber.Format(number).Split('e')[0].Where(char.IsDigit).SkipWhile(c => c == '0')
                .Reverse().SkipWhile(c => c == '0').Count();
            if (digits < 2)
                return;
            string shorter = number.ToString("E" + (digits - 2), CultureInfo.InvariantCulture);
            Assert.NotEqual(number, double.Parse(shorter, CultureInfo.InvariantCulture));
        });

    [Fact]
    public void Powers_of_ten_are_spelled_out_from_ten_to_the_minus_six_up_to_ten_to_the_twenty()
    {
        for (int power = -30; power <= 30; power++)
        {
            string text = EcmaScriptNumber.Format(double.Parse($"1e{power}", CultureInfo.InvariantCulture));
            Assert.Equal(power is < -6 or > 20, text.Contains('e', StringComparison.Ordinal));
        }
    }

    private static readonly Gen<double> FiniteDoubles =
        Gen.ULong.Select(BitConverter.UInt64BitsToDouble).Where(double.IsFinite);
}

using System.Text;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Tests.CanonicalJson;

public class StrictJsonTests
{
    [Theory]
    [InlineData("{\"a\":1,\"a\":2}", "\"a\"")]
    [InlineData("{\"b\":[{\"a\":1,\"\\u0061\":1}]}", "\"a\"")]
    public void A_name_that_stands_twice_is_refused_and_named(string json, string name) =>
        Assert.Contains(name, Refusal(json), StringComparison.Ordinal);

    [Theory]
    [InlineData("\"\\ud800\"")]
    [InlineData("\"\\udc00\"")]
    [InlineData("\"\\ud800x\"")]
    [InlineData("{\"\\ud800\":1}")]
    [InlineData("[\"\\ude02\\ud83d\"]")]
    public void Half_of_a_surrogate_pair_is_refused(string json) =>
        Assert.Contains("surrogate", Refusal(json), StringComparison.Ordinal);

    [Theory]
    [InlineData("1e400")]
    [InlineData("[-1e400]")]
    public void A_number_beyond_a_double_is_refused(string json) =>
        Assert.Contains("range", Refusal(json), StringComparison.Ordinal);

    [Theory]
    [InlineData("NaN")]
    [InlineData("[Infinity]")]
    [InlineData("{a:1}")]
    [InlineData("{\"a\":1,}")]
    [InlineData("[1,]")]
    [InlineData("// note\n1")]
    [InlineData("{} {}")]
    [InlineData("01")]
    [InlineData("'a'")]
    [InlineData("\"\t\"")]
    [InlineData("")]
    [InlineData("\uFEFF{}")]
    public void What_is_not_JSON_is_refused(string json) => Refusal(json);

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_refused()
    {
        Assert.False(StrictJson.Read([(byte)'"', 0xff, (byte)'"']).IsOk);
        Assert.False(StrictJson.Read([(byte)'"', 0xed, 0xa0, 0x80, (byte)'"']).IsOk);
    }

    [Fact]
    public void A_document_that_is_too_large_is_refused() =>
        Assert.Contains("bytes", Refusal("\"" + new string('a', StrictJson.MostBytes) + "\""), StringComparison.Ordinal);

    [Fact]
    public void An_array_is_no_object() => Assert.False(StrictJson.ReadObject("[]"u8).IsOk);

    private static string Refusal(string json)
    {
        var read = StrictJson.Read(Encoding.UTF8.GetBytes(json));
        Assert.False(read.IsOk);
        return read.Sentence;
    }
}

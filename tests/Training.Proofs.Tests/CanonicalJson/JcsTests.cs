using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Training.Proofs.CanonicalJson;

namespace Training.Proofs.Tests.CanonicalJson;

public class JcsTests
{
    // Reference test data of RFC 8785: SHA-256 and length of the canonical output.
    [Theory]
    [InlineData("arrays", "099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42", 32)]
    [InlineData("structures", "605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5", 98)]
    [InlineData("values", "2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb", 118)]
    [InlineData("weird", "6af595a9aa80110b964b4de3f82a05fa6ae7423005019bacfa2620dddc4e94d1", 214)]
    [InlineData("french", "d99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5", 130)]
    [InlineData("unicode", "0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3", 30)]
    public void The_reference_inputs_give_the_reference_outputs(string name, string sha256, int length)
    {
        byte[] input = SharedReference.Bytes($"rfc8785-jcs/input/{name}.json");
        CanonicalText canonical = Jcs.Canonicalize(input).Value;
        Assert.Equal(SharedReference.Text($"rfc8785-jcs/output/{name}.json"), canonical.ToString());
        Assert.Equal(sha256, canonical.Digest.ToString());
        Assert.Equal(length, canonical.Utf8.Length);
    }

    // The outputs that RFC 8785's reference test data prints, with inputs of our own spelling.
    [Theory]
    [InlineData("[ 56.0 , { \"d\":true, \"10\":null, \"1\":[] } ]", "[56,{\"1\":[],\"10\":null,\"d\":true}]")]
    [InlineData(
        "{\"a\":{},\"A\":{},\"10\":{},\"111\":[{\"e\":\"yes\",\"E\":\"no\"}],\"1\":{\"f\":{\"f\":\"hi\",\"F\":5e0},\"\\n\":56},\"\":\"empty\"}",
        "{\"\":\"empty\",\"1\":{\"\\n\":56,\"f\":{\"F\":5,\"f\":\"hi\"}},\"10\":{},\"111\":[{\"E\":\"no\",\"e\":\"yes\"}],\"A\":{},\"a\":{}}")]
    [InlineData(
        "{\"string\":\"\\u20AC$\\u000f\\nA'\\u0042\\\"\\\\\\\\\\\"\\/\",\"numbers\":[333333333.33333329,1E+30,4.50,2e-3,1e-27],\"literals\":[null,true,false]}",
        "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}")]
    public void Space_order_escapes_and_numbers_are_made_canonical(string input, string output) =>
        Assert.Equal(output, Canonical(input));

    [Fact]
    public void Names_are_sorted_by_UTF_16_code_units_so_that_an_emoji_comes_before_a_late_letter() =>
        Assert.Equal("{\"\r\":1,\"1\":1,\"</script>\":1,\"\u0080\":1,\"ö\":1,\"€\":1,\"\U0001F602\":1,\"\uFB33\":1}".Replace("\r", "\\r", StringComparison.Ordinal),
            Canonical("{\"€\":1,\"\\r\":1,\"\uFB33\":1,\"1\":1,\"\U0001F602\":1,\"\u0080\":1,\"ö\":1,\"</script>\":1}"));

    [Fact]
    public void Accents_are_left_as_they_are_coded() =>
        Assert.Equal("\"A\u030A\"", Canonical("\"A\\u030a\""));

    [Fact]
    public void What_is_canonical_stays_as_it_is() =>
        Documents.Sample(document =>
        {
            CanonicalText once = Jcs.Canonicalize(document).Value;
            Assert.Equal(once, Jcs.Canonicalize(once.Utf8).Value);
            Assert.Equal(once, Jcs.ReadCanonical(once.Utf8).Value);
        });

    [Fact]
    public void The_order_in_which_members_were_added_makes_no_difference() =>
        Documents.Sample(document =>
        {
            JsonObject turned = new(document.Reverse().Select(m => KeyValuePair.Create(m.Key, m.Value?.DeepClone())));
            Assert.Equal(Jcs.Canonicalize(document).Value, Jcs.Canonicalize(turned).Value);
        });

    [Fact]
    public void A_number_that_is_not_finite_is_refused()
    {
        Assert.False(Jcs.Canonicalize(JsonValue.Create(double.NaN)).IsOk);
        Assert.False(Jcs.Canonicalize(new JsonArray(JsonValue.Create(double.PositiveInfinity))).IsOk);
    }

    [Fact]
    public void A_whole_number_that_a_double_does_not_hold_is_refused()
    {
        Assert.Equal("9007199254740992", Jcs.Canonicalize(JsonValue.Create(9007199254740992L)).Value.ToString());
        Assert.False(Jcs.Canonicalize(JsonValue.Create(9007199254740993L)).IsOk);
    }

    [Fact]
    public void Half_of_a_surrogate_pair_built_in_memory_is_refused()
    {
        Assert.False(Jcs.Canonicalize(JsonValue.Create("\ud800")).IsOk);
        Assert.False(Jcs.Canonicalize(JsonValue.Create("\udc00\ud800")).IsOk);
        Assert.False(Jcs.Canonicalize(new JsonObject { ["\udfff"] = 1 }).IsOk);
    }

    [Fact]
    public void A_value_nested_too_deep_is_refused_whether_it_was_built_or_read()
    {
        Assert.True(Jcs.Canonicalize(Nested(StrictJson.MostLevels)).IsOk);
        Assert.False(Jcs.Canonicalize(Nested(StrictJson.MostLevels + 1)).IsOk);
        Assert.True(Jcs.Canonicalize(Brackets(StrictJson.MostLevels)).IsOk);
        Assert.False(Jcs.Canonicalize(Brackets(StrictJson.MostLevels + 1)).IsOk);
        Assert.False(Jcs.Canonicalize(Brackets(100_000)).IsOk);
    }

    [Fact]
    public void Bytes_that_are_not_canonical_are_refused_where_canonical_ones_are_asked_for() =>
        Assert.False(Jcs.ReadCanonical("{ }"u8).IsOk);

    internal static Gen<JsonObject> Documents
    {
        get
        {
            Gen<string> text = Gen.String[Gen.Char["aé\"\\\n\u0001€10"], 0, 4];
            Gen<JsonNode> leaf = Gen.OneOf(
                text.Select(t => (JsonNode)JsonValue.Create(t)),
                Gen.Double.Where(double.IsFinite).Select(d => (JsonNode)JsonValue.Create(d)),
                Gen.Int.Select(i => (JsonNode)JsonValue.Create(i)),
                Gen.Bool.Select(b => (JsonNode)JsonValue.Create(b)));
            Gen<JsonNode> list = leaf.Array[0, 3].Select(items => (JsonNode)new JsonArray([.. items.Select(i => i.DeepClone())]));
            Gen<JsonObject> Members(Gen<JsonNode> value) => Gen.Select(text, value).Array[0, 5].Select(pairs =>
                new JsonObject(pairs.DistinctBy(p => p.Item1).Select(p => KeyValuePair.Create(p.Item1, (JsonNode?)p.Item2.DeepClone()))));
            return Members(Gen.OneOf(leaf, list, Members(leaf).Select(m => (JsonNode)m)));
        }
    }

    private static string Canonical(string json) => Jcs.Canonicalize(Encoding.UTF8.GetBytes(json)).Value.ToString();

    private static JsonNode Nested(int levels)
    {
        JsonNode node = new JsonArray();
        for (int i = 1; i < levels; i++)
            node = new JsonArray(node);
        return node;
    }

    private static byte[] Brackets(int levels) => [.. Enumerable.Repeat((byte)'[', levels), .. Enumerable.Repeat((byte)']', levels)];
}

using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Training.Content.Modules;

namespace Training.Content.Tests.Modules;

public sealed class PictureTextTests
{
    private const string Picture = """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 720 400" font-size="24">
          <title>spanner</title>
          <rect width="720" height="400" fill="#fff"/>
          <text x="1" y="2" font-size="28" class="a">spanner</text>
          <text x="3" y="4">
            spanner
          </text>
          <g><text><tspan x="5">spanner</tspan> <tspan>30 min</tspan></text></g>
          <text data-room="20" font-size="28px">spanner</text>
          <text style="fill: #222">a <tspan>spanner</tspan></text>
        </svg>
        """;

    private static PictureLabels Labels(string words) =>
        new("xx", new Dictionary<string, string> { ["spanner"] = words }, new("x", ""));

    private static XElement With(string words, string picture = Picture) => XDocument.Parse(PictureText.With(picture, Labels(words))).Root!;

    private static XElement[] Texts(XElement root) => [.. root.Descendants().Where(part => part.Name.LocalName is "text" or "tspan")];

    /// <summary>Whatever somebody writes as a translation: all that differs are the words of labels and their size.</summary>
    [Fact]
    public void Only_the_words_and_the_size_of_labels_differ_whatever_they_are() =>
        Gen.OneOf(
            Gen.OneOf("</text><script/>", "<![CDATA[x]]>", "]]>", "&amp;", "\"'<>&", "&#0;", "<!--", "शब्द", "𝒳", "\u00a0"),
            Gen.String[Gen.Char[' ', '\ud7ff'], 1, 80]).Where(words => !words.Any(char.IsControl)).Sample(words =>
        {
            var (before, after) = (XDocument.Parse(Picture).Root!, With(words));
            Assert.Contains(Texts(after), text => text.Value.Contains(words, StringComparison.Ordinal));
            foreach (var root in new[] { before, after })
            {
                foreach (var text in Texts(root).Where(text => !text.HasElements && text.Value != "30 min"))
                {
                    text.Value = "";
                    text.SetAttributeValue("font-size", null);
                }
            }

            Assert.Equal(before.ToString(), after.ToString());
        });

    [Fact]
    public void A_label_is_the_whole_text_of_its_element()
    {
        var words = Texts(With("llave")).Where(text => !text.HasElements).Select(text => text.Value.Trim());
        Assert.Equal(["llave", "llave", "llave", "30 min", "llave", "llave"], words);
        Assert.Equal("spanner", With("llave").Descendants().First().Value);
        Assert.StartsWith("a ", With("llave").Elements().Last().Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_without_a_label_that_is_known_says_what_it_said() =>
        Assert.Equal(XDocument.Parse(Picture).ToString(), XDocument.Parse(PictureText.With(Picture, new("xx", new Dictionary<string, string> { ["hammer"] = "x" }, new("x", "")))).ToString());

    [Theory]
    [InlineData("llave", "28")]
    [InlineData("la llave", "24.5")]
    [InlineData("la llave inglesa", "20")]
    [InlineData("आइसोलेटर", "28")]
    public void More_letters_than_there_is_room_for_are_drawn_smaller_down_to_twenty_units(string words, string size) =>
        Assert.Equal(size, (string)Texts(With(words))[0].Attribute("font-size")!);

    [Fact]
    public void Size_is_taken_from_around_the_label_and_room_from_its_author()
    {
        var texts = Texts(With("la llave ing"));
        Assert.Equal("20", (string)texts[1].Attribute("font-size")!);
        Assert.Equal("28px", (string)texts[5].Attribute("font-size")!);
    }

    [Theory]
    [InlineData("0 0 360 200", "10", "10")]
    [InlineData("0 0 720 400", "12", "12")]
    public void The_least_size_is_that_of_the_pictures_width_and_nothing_grows(string box, string size, string least)
    {
        var svg = $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{box}\"><text font-size=\"{size}\">spanner</text></svg>";
        var drawn = Texts(With(new string('m', 60), svg))[0];
        Assert.Equal(least, (string)drawn.Attribute("font-size")!);
    }

    [Fact]
    public void A_size_never_grows_and_never_falls_below_the_least() =>
        Gen.Select(Gen.Int[20, 60], Gen.Int[1, 60]).Sample((size, letters) =>
        {
            var svg = $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 720 400\"><text font-size=\"{size}\">spanner</text></svg>";
            var drawn = double.Parse((string)Texts(With(new string('m', letters), svg))[0].Attribute("font-size")!, CultureInfo.InvariantCulture);
            Assert.InRange(drawn, 20, size);
            // As wide as the label was, to a tenth of a unit, where the least size allows it.
            if (drawn > 20) Assert.InRange(drawn * Math.Max(letters, 7), (size * 7.0) - (0.1 * letters), Math.Max(size * 7.0, size * letters));
        });

    [Theory]
    [InlineData("3", true)]
    [InlineData("?", true)]
    [InlineData("A", true)]
    [InlineData("1 + 2.5 + 4 = 7.5 A", true)]
    [InlineData("30 min", true)]
    [InlineData("− 30 Ah", true)]
    [InlineData("1.5 mm²", true)]
    [InlineData("45 mV", true)]
    [InlineData("below 40 °C", false)]
    [InlineData("connector: 10 A", false)]
    [InlineData("bus L18", false)]
    [InlineData("on", false)]
    [InlineData("30 minutes later", false)]
    [InlineData("30 minutes", false)]
    [InlineData("mΩ", true)]
    [InlineData("months", false)]
    public void A_text_without_two_letters_side_by_side_or_that_is_a_quantity_is_the_same_everywhere(string label, bool same) =>
        Assert.Equal(same, PictureText.IsSameEverywhere(label));

    [Fact]
    public void Labels_to_translate_are_those_of_the_picture_once_each() =>
        Assert.Equal(["spanner"], PictureText.LabelsToTranslate(Picture));
}

using System.Globalization;
using Training.Sequencing.Json;

namespace Training.Sequencing.Tests.Json;

public sealed class AnswerJsonTests
{
    [Theory]
    [InlineData("""[{"step":"a"},{"step":"w","seconds":60.5}]""")]
    [InlineData("""{"start":[{"step":"a"}],"entries":[{"step":"w","seconds":0}]}""")]
    [InlineData("""[{"step":"a","startedAt":0,"finishedAt":12.25}]""")]
    [InlineData("[]")]
    public void What_is_read_is_written_again(string json) =>
        Assert.Equal(json, AnswerJson.Write(AnswerJson.Parse(json).Value));

    [Fact]
    public void A_start_may_be_bare_ids() => Assert.Equal(
        """{"start":[{"step":"a"},{"step":"w","seconds":5}],"entries":[]}""",
        AnswerJson.Write(AnswerJson.Parse("""{"start":["a",{"step":"w","seconds":5}],"entries":[]}""").Value));

    [Theory]
    [InlineData("", "no JSON")]
    [InlineData("nonsense", "no JSON")]
    [InlineData("[{\"step\":\"a\"}", "no JSON")]
    [InlineData("\"a\"", "a list of entries")]
    [InlineData("null", "a list of entries")]
    [InlineData("[\"a\"]", "Place 1: an entry is an object")]
    [InlineData("[{\"step\":\"a\"},{}]", "Place 2 has no “step”")]
    [InlineData("[{\"step\":7}]", "Place 1: “step” is the id")]
    [InlineData("[{\"step\":null}]", "Place 1: “step” is the id")]
    [InlineData("[{\"step\":\"w\",\"seconds\":\"60\"}]", "number of seconds, without quotation marks")]
    [InlineData("[{\"step\":\"w\",\"startedAt\":5,\"finishedAt\":null}]", "only one of")]
    [InlineData("[{\"step\":\"w\",\"seconds\":1e400}]", "must lie between")]
    [InlineData("[{\"step\":\"w\",\"seconds\":-1}]", "must lie between")]
    [InlineData("[{\"step\":\"w\",\"seconds\":1e10}]", "must lie between")]
    [InlineData("[{\"step\":\"w\",\"seconds\":NaN}]", "no JSON")]
    [InlineData("[{\"step\":\"w\",\"step\":\"w\"}]", "key “step” twice")]
    [InlineData("{\"entries\":[],\"entries\":[]}", "key “entries” twice")]
    [InlineData("[{\"step\":\"w\",\"minutes\":1}]", "unknown key “minutes”")]
    [InlineData("{\"entries\":[],\"more\":1}", "unknown key “more”")]
    [InlineData("{\"start\":[]}", "no “entries”")]
    [InlineData("{\"entries\":{}}", "lists of entries")]
    [InlineData("[{\"step\":\"w\",\"startedAt\":5}]", "only one of")]
    [InlineData("[{\"step\":\"w\",\"startedAt\":5,\"finishedAt\":4}]", "finished before it was started")]
    [InlineData("[{\"step\":\"\\ud800\"}]", "not valid Unicode")]
    [InlineData("[[[[[[[[[[[[1]]]]]]]]]]]]", "no JSON")]
    public void What_cannot_be_an_answer_is_refused_with_a_sentence(string json, string why) =>
        Assert.Contains(why, AnswerJson.Parse(json).Fault.Sentence, StringComparison.Ordinal);

    [Fact]
    public void A_time_that_is_null_is_left_out() => Assert.Equal(
        """[{"step":"w"},{"step":"a"}]""",
        AnswerJson.Write(AnswerJson.Parse("""[{"step":"w","seconds":null},{"step":"a","startedAt":null,"finishedAt":null}]""").Value));

    [Theory]
    [InlineData("", 1, 1)]
    [InlineData("[{\"ste", 1, 7)]
    [InlineData("[\n  {\"step\": }\n]", 2, 12)]
    [InlineData("[\r\n{\"step\":\"ä🔑\",}]", 2, 15)]
    public void The_place_at_which_a_text_stops_being_JSON_is_told_in_letters(string json, int line, int column)
    {
        Assert.False(AnswerJson.Parse(json, out var brokenAt).IsOk);
        Assert.Equal(new JsonPlace(line, column), brokenAt);
    }

    [Fact]
    public void What_is_JSON_and_no_answer_is_broken_nowhere()
    {
        Assert.False(AnswerJson.Parse("{}", out var brokenAt).IsOk);
        Assert.Null(brokenAt);
    }

    [Fact]
    public void Deep_nesting_and_long_texts_are_refused()
    {
        Assert.False(AnswerJson.Parse(new string('[', 100_000)).IsOk);
        Assert.Contains("too long", AnswerJson.Parse(new string(' ', 5_000_000)).Fault.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_are_read_and_written_with_a_point_whatever_the_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new("de-DE");
            const string json = """[{"step":"w","seconds":1.5}]""";
            Assert.Equal(json, AnswerJson.Write(AnswerJson.Parse(json).Value));
            Assert.Contains("59.5 s", Sample.RelayTray.Grade("key-off rest:59.5 lift-tray hook").Findings[0].Message,
                StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}

using System.Text.RegularExpressions;
using Training.Web.Features.Shared;

namespace Training.Web.Tests.WordBooks;

/// <summary>The words of the interface in every language, held against the sentences of the source.</summary>
public sealed partial class WordBookTests
{
    /// <summary>How many sentences of the source may wait for their translation in a language.</summary>
    private const int MissingAllowed = 0;

    /// <summary>How many translations may stand for a sentence that the source no longer has.</summary>
    private const int UnusedAllowed = 0;

    public static TheoryData<string> EachLanguage => [.. Tongues.All.Skip(1).Select(tongue => tongue.Code)];

    [Theory]
    [MemberData(nameof(EachLanguage))]
    public void Every_sentence_of_the_source_is_translated(string language) =>
        Report($"{language}: without translation", MissingAllowed, SourceWords.All.Keys.Except(WordBook.Read(language).Keys));

    [Theory]
    [MemberData(nameof(EachLanguage))]
    public void Nothing_is_translated_that_nobody_says(string language) =>
        Report($"{language}: no longer said", UnusedAllowed, WordBook.Read(language).Keys.Except(SourceWords.All.Keys));

    [Theory]
    [MemberData(nameof(EachLanguage))]
    public void A_translation_has_the_gaps_of_its_sentence(string language) => Assert.Empty(
        WordBook.Read(language).Where(entry => !Gaps(entry.Key).SequenceEqual(Gaps(entry.Value))).Select(entry => entry.Key));

    [Theory]
    [MemberData(nameof(EachLanguage))]
    public void A_translation_can_be_filled(string language) => Assert.All(
        WordBook.Read(language), entry => Assert.NotEmpty(string.Format(null, entry.Value, [.. Enumerable.Repeat<object>(1, 10)])));

    [Theory]
    [MemberData(nameof(EachLanguage))]
    public void A_translation_says_something(string language) =>
        Assert.Empty(WordBook.Read(language).Where(entry => string.IsNullOrWhiteSpace(entry.Value)).Select(entry => entry.Key));

    [Theory]
    [InlineData("Sign in")]
    [InlineData("Put the whole job in order")]
    [InlineData("There is a shop called {0} already.")]
    [InlineData("“{0}” ({1}) was done before “{2}” ({3}).")]
    [InlineData("Only {0:0.##} s lay between “{1}” and “{2}”.")]
    [InlineData("Corrected to 80 °F by {0}")]
    [InlineData("You are the administrator. Sign in.")]
    [InlineData("My records")]
    public void Sentences_of_every_kind_are_found_in_the_source(string sentence) => Assert.Contains(sentence, SourceWords.All.Keys);

    private static void Report(string what, int allowed, IEnumerable<string> sentences)
    {
        var list = sentences.ToList();
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{what}: {list.Count}{string.Concat(list.Select(sentence => $"\n{sentence}\t{SourceWords.All.GetValueOrDefault(sentence)}"))}");
        Assert.True(list.Count <= allowed, $"{what}: {list.Count}, of which {allowed} may be.\n{string.Join('\n', list)}");
    }

    private static IEnumerable<string> Gaps(string text) => Gap().Matches(text).Select(match => match.Value).Order(StringComparer.Ordinal);

    [GeneratedRegex(@"\{\d+[^}]*\}")]
    private static partial Regex Gap();
}

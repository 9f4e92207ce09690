using Training.Content.Tests.Shipped;
using Training.Content.Writing;

namespace Training.Content.Tests.Writing;

/// <summary>A translation is begun with everything in its place and nothing to say but what is to be translated.</summary>
public sealed class BegunTranslationTests
{
    private const string StillToDo = "This is still the English text: translate it.";
    private static readonly IReadOnlyList<ContentFile> Files = ShippedContent.Files;

    public static TheoryData<string> All => [.. Files.Where(file => ContentFile.CanBeTranslated(file.Path)).Select(file => file.Path)];

    [Theory]
    [MemberData(nameof(All))]
    public void The_check_of_a_begun_translation_names_what_is_to_be_translated_and_nothing_else(string path)
    {
        // French is spoken nowhere in what is shipped, so everything is still to be translated.
        var begun = BegunTranslation.Of(Files, path, "fr").Value;
        Assert.Equal(ContentFile.TranslationOf(path, "fr"), begun.Path);
        var report = DraftCheck.Of(Surroundings.Of(Files, begun), begun);
        Assert.NotEmpty(report.Problems);
        Assert.All(report.Problems, problem => Assert.Equal((ProblemLevel.Held, StillToDo), (problem.Level, problem.Sentence)));
    }

    [Fact]
    public void Begun_translations_break_nothing_else()
    {
        var begun = Files.Where(file => ContentFile.CanBeTranslated(file.Path)).Select(file => BegunTranslation.Of(Files, file.Path, "fr").Value);
        var reading = ContentReader.Read([.. Files, .. begun]);
        Assert.All(reading.Problems, problem => Assert.Equal(StillToDo, problem.Sentence));
        Assert.Equal("fr", Assert.Single(reading.Library!.Procedures[0].Translations, translation => translation.Language == "fr").Language);
    }

    [Fact]
    public void A_sentence_that_is_translated_is_named_no_more()
    {
        var begun = BegunTranslation.Of(Files, "procedures/isolate-chassis.yaml", "fr").Value;
        var before = Places(begun);
        var translated = begun with { Text = begun.Text.Replace("do: Set the parking brake", "do: Serrer le frein de stationnement", StringComparison.Ordinal) };
        Assert.NotEqual(begun.Text, translated.Text);
        Assert.Single(before.Except(Places(translated)));
        Assert.Empty(Places(translated).Except(before));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void What_is_translated_is_never_named(string path)
    {
        foreach (var language in new[] { "es", "hi" })
        {
            var translation = Files.Single(file => file.Path == ContentFile.TranslationOf(path, language));
            Assert.Empty(Places(translation));
        }
    }

    [Fact]
    public void A_picture_whose_words_are_translated_already_is_taken()
    {
        var lesson = Files.First(file => file.Name == "lesson.md" && file.Text.Contains("](pictures/", StringComparison.Ordinal));
        var picture = lesson.Text.Split("](pictures/")[1].Split(".svg")[0];
        var module = lesson.Path.Split('/')[1];
        ContentFile[] more = [.. Files, new($"modules/{module}/pictures/{picture}.fr.svg", "<svg/>")];
        Assert.Contains($"](pictures/{picture}.fr.svg", BegunTranslation.Of(more, lesson.Path, "fr").Value.Text, StringComparison.Ordinal);
        Assert.Contains($"](pictures/{picture}.svg", BegunTranslation.Of(Files, lesson.Path, "fr").Value.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("procedures/isolate-chassis.es.yaml")]
    [InlineData("glossary/en.yaml")]
    [InlineData("modules/02-shut-down-and-isolate/pictures/x.svg")]
    [InlineData("procedures/nothing.yaml")]
    [InlineData("../x.md")]
    public void What_is_no_text_of_the_default_language_is_refused(string path) => Assert.False(BegunTranslation.Of(Files, path, "fr").IsOk);

    [Theory]
    [InlineData("procedures/isolate-chassis.yaml")]
    [InlineData("modules/02-shut-down-and-isolate/lesson.md")]
    [InlineData("scenarios/cold-cell.md")]
    [InlineData("competencies/electrical-isolation.yaml")]
    public void What_cannot_be_read_is_refused(string path)
    {
        ContentFile[] broken = [.. Files.Where(file => file.Path != path), new(path, "id: [")];
        var refused = BegunTranslation.Of(broken, path, "fr");
        Assert.StartsWith(path, refused.Fault.Sentence, StringComparison.Ordinal);
    }

    private static IReadOnlyList<int> Places(ContentFile file) =>
        [.. DraftCheck.Of(Surroundings.Of(Files, file), file).Problems.Where(problem => problem.Sentence == StillToDo).Select(problem => problem.Line)];
}

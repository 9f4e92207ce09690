using Training.Content.Measuring;
using Training.Content.Modules;

namespace Training.Content.Tests.Measuring;

public sealed class LessonMeasureTests
{
    private static LessonMeasure Of(string markdown) => LessonMeasure.Of(new Lesson("en", "x", new("x.md", "---\ntitle: x\n---\n" + markdown)));

    [Theory]
    [InlineData("One two. Three four five.", 5, 2)]
    [InlineData("At 1.240 it is half full. Good!", 7, 2)]
    [InlineData("Is it dead? Prove it.", 5, 2)]
    [InlineData("He said \"stop.\" Then he went.", 6, 2)]
    [InlineData("Cables, e.g. thick ones, are heavy.", 6, 1)]
    [InlineData("- Key off\n- Chock the wheel.", 5, 2)]
    [InlineData("चाबी बंद करें। फिर रुकें।", 5, 2)]
    [InlineData("## A heading\n\nOne **two** `three`.", 3, 1)]
    [InlineData("| a | b |\n| --- | --- |\n| c d | e |", 5, 4)]
    [InlineData("", 0, 0)]
    public void Words_and_sentences_are_counted_in_prose_alone(string markdown, int words, int sentences)
    {
        var measure = Of(markdown);
        Assert.Equal((words, sentences), (measure.Words, measure.Sentences));
    }

    [Fact]
    public void Pictures_checks_and_the_longest_paragraph_are_counted()
    {
        var measure = Of("One two three.\n\n![what it shows, at length](pictures/a.svg)\n\n::: check 1\nIs it?\n\n- Yes.\n  - So it is.\n- No.\n  - It is.\n:::\n");
        Assert.Equal((1, 1, 3), (measure.Pictures, measure.Checks, measure.LongestParagraph));
    }

    [Fact]
    public void A_begun_minute_counts() => Assert.Equal(2, Of(string.Join(' ', Enumerable.Repeat("word", 121))).Minutes);

    [Theory]
    [InlineData("Wait 90 s.", "90 s")]
    [InlineData("It draws 12.5 A.", "12.5 A")]
    [InlineData("It weighs 20 000 kg.", "20 000 kg")]
    [InlineData("A cell reads 1.240 today.", "1.240")]
    [InlineData("Tighten to 25 N·m.", "25 N·m")]
    [InlineData("At 80 % it is good.", "80 %")]
    [InlineData("Two panels, 3 steps, step 4 A", "4 A")]
    [InlineData("See 29 CFR 1910.147(d).", null)]
    [InlineData("The bus L18 has 2 batteries.", null)]
    [InlineData("Read 3 sentences.", null)]
    public void A_number_with_a_unit_is_a_quantity(string text, string? quantity)
    {
        var path = "modules/02-refit/lesson.md";
        var file = ContentFolders.File(path);
        var problems = ContentReader.Read(ContentFolders.With(path, file.Text + "\n## More\n\n" + text + "\n")).Problems;
        if (quantity is null) Assert.Empty(problems);
        else Assert.StartsWith($"\"{quantity}\" stands in the section \"More\"", Assert.Single(problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_language_lacks_is_listed_by_the_path_it_would_have()
    {
        var gaps = LanguageGaps.Of(ContentFolders.Good, ContentReader.Read(ContentFolders.Good).Problems, "es");
        Assert.Equal(["modules/02-refit/lesson.es.md", "procedures/refit-relay-tray.es.yaml", "scenarios/at-the-crane.es.md", "scenarios/half-refitted.es.md"], gaps.Missing);
        Assert.Empty(gaps.OutOfStep);
        Assert.Equal(14, gaps.All);
        var bad = BadCase.Read("lesson-translation-of-other-pictures").Files;
        Assert.Equal(["modules/01-relay-tray/lesson.es.md"], LanguageGaps.Of(bad, ContentReader.Read(bad).Problems, "es").OutOfStep);
    }

    [Fact]
    public void Words_of_pictures_and_names_of_sources_are_counted_one_by_one()
    {
        const string labels = "modules/01-relay-tray/pictures/labels.es.yaml";
        const string lesson = "modules/01-relay-tray/lesson.es.md";
        var files = ContentFolders.With(labels, "labels: { tray: bandeja }\n").Where(file => file.Path != lesson)
            .Append(new(lesson, ContentFolders.File(lesson).Text.Replace("  - { id: key-off, name: Contacto quitado antes de tocar relés }\n", "  - { id: key-off, where: aquí }\n", StringComparison.Ordinal)))
            .ToArray();
        var gaps = LanguageGaps.Of(files, ContentReader.Read(files).Problems, "es");
        Assert.Equal([$"{lesson}: source key-off", $"{labels}: off"], gaps.Missing.Where(name => name.StartsWith("modules/01", StringComparison.Ordinal)));
        Assert.Equal(14, gaps.All);
        Assert.Equal([labels], gaps.OutOfStep);
    }

    [Fact]
    public void A_fact_that_a_translation_does_not_name_is_missing()
    {
        const string path = "procedures/change-relay-tray.es.yaml";
        var bare = ContentFolders.With(path, ContentFolders.File(path).Text.Replace("facts:\n  key: [llave, puesta, quitada]\n", "", StringComparison.Ordinal));
        var gaps = LanguageGaps.Of(bare, ContentReader.Read(bare).Problems, "es");
        Assert.Equal([$"{path}: fact key"], gaps.Missing.Where(name => name.Contains("fact", StringComparison.Ordinal)));
        Assert.Equal(14, gaps.All);
    }
}

using Training.Content.Measuring;
using Training.Content.Modules;

namespace Training.Content.Tests.Shipped;

/// <summary>What a reader may count on in every lesson that the project ships, in every language.</summary>
public sealed class LessonsTests
{
    // How far what a lesson says of its length may be from what is reckoned: nobody reads to the minute.
    private const int Minutes = 3;

    private static readonly string[] SectionsThatAskNothing = ["What must wait for what", "Before you practise"];

    public static TheoryData<string> Lessons => [.. ShippedContent.Library.Modules.SelectMany(LessonsOf).Select(lesson => lesson.File.Path)];

    [Theory]
    [MemberData(nameof(Lessons))]
    public void A_lesson_takes_a_quarter_to_half_an_hour_and_says_so(string path)
    {
        var (module, lesson) = Find(path);
        Assert.InRange(module.Minutes, 15, 30);
        Assert.InRange(LessonMeasure.Of(lesson).Minutes, module.Minutes - Minutes, module.Minutes + Minutes);
    }

    [Theory]
    [MemberData(nameof(Lessons))]
    public void Every_section_that_teaches_asks_whether_it_was_understood(string path)
    {
        var (module, _) = Find(path);
        // The checker holds a translation to the same questions in the same sections.
        var sections = module.Lesson.File.Text.Split("\n## ").Skip(1);
        Assert.All(
            sections.Where(section => !SectionsThatAskNothing.Any(name => section.StartsWith(name, StringComparison.Ordinal))),
            section => Assert.True(section.Contains("\n::: check ", StringComparison.Ordinal), section.Split('\n')[0]));
    }

    [Theory]
    [InlineData("es")]
    [InlineData("hi")]
    public void Nothing_is_left_in_English_in_another_language(string language) =>
        Assert.Equal([], LanguageGaps.Of(ShippedContent.Files, ShippedContent.Reading.Problems, language).Missing);

    private static IEnumerable<Lesson> LessonsOf(Module module) => module.Translations.Prepend(module.Lesson);

    private static (Module Module, Lesson Lesson) Find(string path) => ShippedContent.Library.Modules
        .SelectMany(LessonsOf, (module, lesson) => (module, lesson)).Single(found => found.lesson.File.Path == path);
}

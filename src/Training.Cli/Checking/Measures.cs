using System.Globalization;
using Training.Content;
using Training.Content.Measuring;

namespace Training.Cli.Checking;

/// <summary>How much there is to read in each lesson, a line each.</summary>
internal static class Measures
{
    public static void Write(IReadOnlyList<ContentFile> content, TextWriter output)
    {
        if (ContentReader.Read(content).Library is not { } library) return;
        output.WriteLine($"{"lesson",-52} words  sentences  words/sentence  longest paragraph  pictures  checks  minutes");
        foreach (var lesson in library.Modules.SelectMany(module => module.Translations.Prepend(module.Lesson)))
        {
            var measure = LessonMeasure.Of(lesson);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{lesson.File.Path,-52} {measure.Words,5}  {measure.Sentences,9}  {measure.WordsASentence,14:0.0}  {measure.LongestParagraph,17}  {measure.Pictures,8}  {measure.Checks,6}  {measure.Minutes,7}"));
        }
    }
}

using System.Globalization;
using Training.Content;
using Training.Content.Measuring;

namespace Training.Cli.Checking;

/// <summary>What of a content folder is missing or out of step in a language.</summary>
internal static class Gaps
{
    public static void Write(IReadOnlyList<ContentFile> content, string language, TextWriter output)
    {
        var reading = ContentReader.Read(content);
        var gaps = LanguageGaps.Of(content, reading.Problems, language);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{language}: {gaps.All - gaps.Missing.Count} of {gaps.All} texts translated, {gaps.OutOfStep.Count} out of step"));
        foreach (var path in gaps.Missing) output.WriteLine($"{language}: missing: {path}");
        foreach (var path in gaps.OutOfStep) output.WriteLine($"{language}: out of step: {path}");
    }
}

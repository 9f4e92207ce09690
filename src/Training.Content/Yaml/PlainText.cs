using System.Globalization;
using System.Text;

namespace Training.Content.Yaml;

/// <summary>What any text must be before it is parsed: not too large, UTF-8, no control characters.</summary>
internal static class PlainText
{
    /// <summary>Whether a file can be parsed; reports what forbids it.</summary>
    public static bool IsSound(ContentFile file, ProblemList problems)
    {
        if (file.Text.Length > ContentFile.LargestSize || Encoding.UTF8.GetByteCount(file.Text) > ContentFile.LargestSize)
        {
            problems.Error(Place.Start, "The file is larger than 1 MiB: split it, or remove what does not belong in it.");
            return false;
        }

        for (var (i, line, lineStart) = (0, 1, 0); i < file.Text.Length; i++)
        {
            var character = file.Text[i];
            if (character == '\n')
            {
                line++;
                lineStart = i + 1;
            }
            else if (character == '\uFFFD' || IsLoneSurrogate(file.Text, i))
            {
                problems.Error(new(line, i - lineStart + 1), "This is not UTF-8 text: save the file in UTF-8.");
                return false;
            }
            else if (char.IsControl(character) && character is not ('\t' or '\r'))
            {
                problems.Error(
                    new(line, i - lineStart + 1),
                    string.Create(CultureInfo.InvariantCulture, $"A control character (U+{(int)character:X4}) stands here: remove it."));
                return false;
            }
        }

        return true;
    }

    private static bool IsLoneSurrogate(string text, int i) =>
        char.IsSurrogate(text[i])
        && !(char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
        && !(char.IsLowSurrogate(text[i]) && i > 0 && char.IsHighSurrogate(text[i - 1]));
}

using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace Training.Sequencing.Json;

/// <summary>
/// How JSON is written: every letter as itself, but what means something in HTML escaped. That brackets close is ours to
/// see to, and the tests'.
/// </summary>
internal static class JsonText
{
    public static JsonWriterOptions Options { get; } = new()
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        SkipValidation = true,
    };
}

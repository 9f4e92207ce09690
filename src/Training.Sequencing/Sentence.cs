using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Training.Sequencing;

/// <summary>
/// A sentence for a person, kept as the English words with gaps and what stands in the gaps, so that somebody above can
/// say it in another language. Where a sentence is asked for, <c>$"There is no {what} here."</c> makes one, and so does
/// a plain text without gaps.
/// </summary>
/// <remarks>The compiler fills it piece by piece where an interpolated string stands; nobody else changes it.</remarks>
[InterpolatedStringHandler]
public sealed class Sentence : IEquatable<Sentence>
{
    private readonly StringBuilder template;
    private readonly List<object?> arguments;

    /// <summary>Begins a sentence; what the compiler calls.</summary>
    /// <param name="literalLength">How many letters stand between the gaps.</param>
    /// <param name="formattedCount">How many gaps there are.</param>
    public Sentence(int literalLength, int formattedCount) =>
        (template, arguments) = (new(literalLength + 4 * formattedCount), new(formattedCount));

    /// <summary>The English words, the gaps as <c>{0}</c>, <c>{1}</c>: the key by which a translation is found.</summary>
    public string Template => template.ToString();

    /// <summary>What stands in the gaps: plain values, other sentences, or things that have a name in each language.</summary>
    public IReadOnlyList<object?> Arguments => arguments;

    /// <summary>A text without gaps.</summary>
    /// <param name="text">The text.</param>
    public static implicit operator Sentence(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var sentence = new Sentence(text.Length, 0);
        sentence.AppendLiteral(text);
        return sentence;
    }

    /// <summary>Adds words; what the compiler calls.</summary>
    /// <param name="value">The words.</param>
    public void AppendLiteral(string value) =>
        template.Append(value).Replace("{", "{{", template.Length - value.Length, value.Length)
            .Replace("}", "}}", template.Length - value.Length, value.Length);

    /// <summary>Adds a gap; what the compiler calls.</summary>
    /// <param name="value">What stands in it.</param>
    /// <param name="format">How it is written, or null.</param>
    public void AppendFormatted<T>(T value, string? format = null)
    {
        template.Append(CultureInfo.InvariantCulture, $"{{{arguments.Count}");
        if (format is not null) template.Append(':').Append(format);
        template.Append('}');
        arguments.Add(value);
    }

    /// <summary>The sentence in another language.</summary>
    /// <param name="format">How the language writes numbers.</param>
    /// <param name="translate">Finds the words for a template; the same text where there are none.</param>
    /// <param name="name">What a thing in a gap is called in the language; the thing itself where it has no name.</param>
    public string Say(IFormatProvider format, Func<string, string> translate, Func<object?, object?> name)
    {
        ArgumentNullException.ThrowIfNull(translate);
        ArgumentNullException.ThrowIfNull(name);
        return string.Format(format, translate(Template),
            [.. arguments.Select(value => value is Sentence inner ? inner.Say(format, translate, name) : name(value))]);
    }

    /// <inheritdoc/>
    public bool Equals(Sentence? other) => other is not null && ToString() == other.ToString();

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Sentence);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(ToString());

    /// <summary>The sentence in English.</summary>
    public override string ToString() => string.Format(CultureInfo.InvariantCulture, Template, [.. arguments]);
}

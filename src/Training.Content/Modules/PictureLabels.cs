namespace Training.Content.Modules;

/// <summary>What the words in a module's pictures are in another language. The shapes stand once, in the picture's own file.</summary>
/// <param name="Language">The language, such as <c>es</c>.</param>
/// <param name="Words">Each label as the pictures have it, with what stands in its place.</param>
/// <param name="File">The file that they were read from.</param>
public sealed record PictureLabels(string Language, IReadOnlyDictionary<string, string> Words, ContentFile File);

namespace Training.Content;

/// <summary>Reads content files into a library, and says everything that an author must mend, all at once.</summary>
public static class ContentReader
{
    /// <summary>Reads the files of one content folder. Pure: the same files give the same reading.</summary>
    /// <param name="files">The files.</param>
    public static ContentReading Read(IReadOnlyList<ContentFile> files) => throw new NotImplementedException();
}

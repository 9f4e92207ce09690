using PdfSharp.Fonts;

namespace Training.Web.Printing;

/// <summary>The letters of printed sheets: a free sans-serif of the machine. None is shipped with the house.</summary>
internal sealed class PrintFonts : IFontResolver
{
    public const string Family = "sheet";

    // The folders and files of Debian's fonts-dejavu-core, fonts-noto-core and fonts-liberation, and of other systems.
    private static readonly string[] Folders = ["/usr/share/fonts", "/usr/local/share/fonts", "/Library/Fonts", "/System/Library/Fonts", @"C:\Windows\Fonts"];

    private static readonly (string Plain, string Bold)[] Known =
    [
        ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"),
        ("NotoSans-Regular.ttf", "NotoSans-Bold.ttf"),
        ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"),
        ("arial.ttf", "arialbd.ttf"),
    ];

    private readonly byte[] plain;
    private readonly byte[] bold;

    private PrintFonts(string plain, string bold) => (this.plain, this.bold) = (File.ReadAllBytes(plain), File.ReadAllBytes(bold));

    /// <summary>The machine's letters, found once; null where it has none that we know.</summary>
    public static PrintFonts? OfMachine => Found.Value;

    private static Lazy<PrintFonts?> Found { get; } = new(() =>
    {
        var files = Folders.Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.ttf", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true }))
            .ToLookup(file => Path.GetFileName(file), StringComparer.OrdinalIgnoreCase);
        var pair = Known.FirstOrDefault(pair => files.Contains(pair.Plain) && files.Contains(pair.Bold));
        if (pair == default) return null;
        var fonts = new PrintFonts(files[pair.Plain].First(), files[pair.Bold].First());
        GlobalFontSettings.FontResolver = fonts;
        return fonts;
    });

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? "bold" : "plain");

    public byte[]? GetFont(string faceName) => faceName == "bold" ? bold : plain;

    /// <summary>
    /// Whether a text comes out right. Letters that join or stack (Arabic, Devanagari, Thai …) need shaping, which the PDF
    /// library does not do, and East Asian ones are not in these fonts: such a text is refused rather than printed wrong.
    /// </summary>
    public static bool CanWrite(string text) => text.EnumerateRunes().All(letter =>
        letter.Value < 0x0590 || letter.Value is >= 0x1E00 and < 0x2100);
}

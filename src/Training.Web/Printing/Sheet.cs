using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Training.Web.Drawings;

namespace Training.Web.Printing;

/// <summary>A page of a PDF that is being drawn, measured in millimetres from its top left corner.</summary>
internal sealed class Sheet : IDisposable
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private static readonly XColor Ink = XColor.FromArgb(0x1c, 0x24, 0x2b);
    private readonly XGraphics graphics;

    public Sheet(PdfDocument document, double width, double height)
    {
        var page = document.AddPage();
        page.Width = XUnit.FromMillimeter(width);
        page.Height = XUnit.FromMillimeter(height);
        graphics = XGraphics.FromPdfPage(page);
        Width = width;
    }

    public double Width { get; }

    /// <summary>Writes a line whose letters stand on a height; it is made smaller, down to two thirds, and then cut, to fit a width.</summary>
    public void Write(string text, double x, double baseline, double size, double width, bool bold = false)
    {
        var font = Font(size, bold);
        while (size > 0 && Measure(text, font) > width && font.Size > size * 2 / 3) font = Font(font.Size - 0.25, bold);
        if (Measure(text, font) > width)
        {
            while (text.Length > 1 && Measure(text + "…", font) > width) text = text[..^1];
            text += "…";
        }

        graphics.DrawString(text, font, new XSolidBrush(Ink), x * PointsPerMillimetre, baseline * PointsPerMillimetre);
    }

    /// <summary>
    /// Writes a text whole: in one line where it fits at two thirds of its size, else in two that end on the same height,
    /// as large as they go. Nobody's name is cut.
    /// </summary>
    public void WriteWhole(string text, double x, double baseline, double size, double width, bool bold = false)
    {
        if (Measure(text, Font(size * 2 / 3, bold)) <= width)
        {
            Write(text, x, baseline, size, width, bold);
            return;
        }

        // Between words as long as that can be read, else wherever a line is full.
        foreach (var (least, betweenWords) in new[] { (5.0, true), (3.5, false) })
            for (var smaller = size * 2 / 3; smaller >= least; smaller -= 0.25)
            {
                var font = Font(smaller, bold);
                var (first, second) = Halves(text, font, width, betweenWords);
                if (first.Length == 0 || Measure(second, font) > width) continue;
                Write(first, x, baseline - (smaller * 1.2 / PointsPerMillimetre), smaller, width, bold);
                Write(second, x, baseline, smaller, width, bold);
                return;
            }

        Write(text, x, baseline, size, width, bold);
    }

    /// <summary>Writes a text in as many lines as it needs and gives the height below the last one.</summary>
    public double WriteLines(string text, double x, double baseline, double size, double width, bool bold = false)
    {
        var font = Font(size, bold);
        var line = "";
        var step = size * 1.35 / PointsPerMillimetre;
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Measure(longer, font) > width)
            {
                Write(line, x, baseline, size, width, bold);
                (line, baseline) = (word, baseline + step);
            }
            else
            {
                line = longer;
            }
        }

        Write(line, x, baseline, size, width, bold);
        return baseline + step;
    }

    /// <summary>A thin line from the left to the right.</summary>
    public void Rule(double x, double y, double width) =>
        graphics.DrawLine(new XPen(Ink, 0.5), x * PointsPerMillimetre, y * PointsPerMillimetre, (x + width) * PointsPerMillimetre, y * PointsPerMillimetre);

    /// <summary>A filled mark of a state: a disc for yes, a square for no, so that it is told apart without colour.</summary>
    public void Mark(bool yes, double x, double y, double size)
    {
        var (left, top, side) = (x * PointsPerMillimetre, y * PointsPerMillimetre, size * PointsPerMillimetre);
        if (yes) graphics.DrawEllipse(new XSolidBrush(XColor.FromArgb(0x1f, 0x5f, 0x3a)), left, top, side, side);
        else graphics.DrawRectangle(new XSolidBrush(XColor.FromArgb(0x9a, 0x1f, 0x1f)), left, top, side, side);
    }

    /// <summary>A QR code with its quiet zone.</summary>
    public void Code(QrCode code, double x, double y, double side)
    {
        var module = side / code.Size * PointsPerMillimetre;
        var (left, top) = (x * PointsPerMillimetre, y * PointsPerMillimetre);
        foreach (var bar in code.Bars)
            graphics.DrawRectangle(XBrushes.Black, left + bar.X * module, top + bar.Y * module, bar.Width * module, module);
    }

    public void Dispose() => graphics.Dispose();

    /// <summary>As much as a first line takes, and the rest.</summary>
    private (string First, string Second) Halves(string text, XFont font, double width, bool betweenWords)
    {
        var fits = text.Length;
        while (fits > 1 && Measure(text[..fits], font) > width) fits--;
        if (betweenWords) fits = Math.Max(0, text.LastIndexOf(' ', Math.Min(fits, text.Length - 1)));
        return (text[..fits].Trim(), text[fits..].Trim());
    }

    private double Measure(string text, XFont font) => graphics.MeasureString(text, font).Width / PointsPerMillimetre;

    private static XFont Font(double size, bool bold) => new(PrintFonts.Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
}

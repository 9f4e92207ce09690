using System.Globalization;
using System.Xml.Linq;
using Training.Web.Drawings;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Training.Web.Tests.Drawings;

public sealed class QrDrawingTests
{
    private const string Address = "https://training.example/p/uEUkP1pJLUfT5xli25CJF9pAzKLVXRTKWux2WneIJdE";

    [Fact]
    public void A_reader_reads_the_address_from_the_drawn_rectangles() => Assert.Equal(Address, Read(QrDrawing.Draw(Address, "A code")));

    [Fact]
    public void Four_empty_modules_stand_around_it_as_the_standard_asks()
    {
        var dark = Rectangles(QrDrawing.Draw(Address, "A code")).Where(rectangle => rectangle.IsDark).ToList();
        var side = Side(QrDrawing.Draw(Address, "A code"));
        Assert.All(dark, rectangle => Assert.True(
            rectangle.X >= 4 && rectangle.Y >= 4 && rectangle.X + rectangle.Width <= side - 4 && rectangle.Y + 1 <= side - 4));
    }

    [Fact]
    public void Its_text_alternative_is_written_as_text()
    {
        var svg = XDocument.Parse(QrDrawing.Draw(Address, "<Proof> & link"));
        Assert.Equal("<Proof> & link", svg.Root!.Elements().First().Value);
        Assert.Equal("img", (string?)svg.Root.Attribute("role"));
    }

    private static string? Read(string svg)
    {
        const int Scale = 4;
        var side = Side(svg) * Scale;
        var pixels = Enumerable.Repeat((byte)255, side * side).ToArray();
        foreach (var rectangle in Rectangles(svg).Where(rectangle => rectangle.IsDark))
            for (var y = rectangle.Y * Scale; y < (rectangle.Y + 1) * Scale; y++)
                pixels.AsSpan((y * side) + (rectangle.X * Scale), rectangle.Width * Scale).Clear();
        var picture = new RGBLuminanceSource(pixels, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(picture)))?.Text;
    }

    private static int Side(string svg) => int.Parse(((string)XDocument.Parse(svg).Root!.Attribute("viewBox")!).Split(' ')[2], CultureInfo.InvariantCulture);

    private static IEnumerable<(int X, int Y, int Width, bool IsDark)> Rectangles(string svg) =>
        XDocument.Parse(svg).Root!.Elements().Where(element => element.Name.LocalName == "rect").Select(element =>
            ((int?)element.Attribute("x") ?? 0, (int?)element.Attribute("y") ?? 0, (int)element.Attribute("width")!, (string?)element.Attribute("fill") == "#000"));
}

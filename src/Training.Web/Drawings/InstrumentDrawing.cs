using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>Draws what is read in a question: one small drawing for each sort of instrument.</summary>
public static class InstrumentDrawing
{
    /// <summary>Draws the picture as SVG.</summary>
    /// <param name="picture">What it shows.</param>
    /// <param name="id">An id that nothing else of the page has.</param>
    public static string Draw(InstrumentPicture picture, string id) => (picture switch
    {
        MeterPicture meter => MeterDrawing.Draw(meter, id),
        ScalePicture { IsFloat: true } scale => FloatDrawing.Draw(scale, id),
        ScalePicture scale => ThermometerDrawing.Draw(scale, id),
        NotePicture note => NoteDrawing.Draw(note, id),
        _ => throw new ArgumentOutOfRangeException(nameof(picture), picture, "No drawing is made of it."),
    }).ToString(SaveOptions.DisableFormatting);
}

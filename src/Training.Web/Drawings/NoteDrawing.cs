using System.Xml.Linq;

namespace Training.Web.Drawings;

/// <summary>A note on which numbers stand, row by row.</summary>
internal static class NoteDrawing
{
    private const double Width = 280;
    private const double RowHeight = 52;
    private const int Letters = 30;

    public static XElement Draw(NotePicture note, string id)
    {
        var lines = note.Rows.Select(row => Svg.Wrap(row.Title, Letters)).ToList();
        var heights = lines.Select(line => RowHeight + (line.Count - 1) * 18).ToList();
        var svg = Svg.Picture(note.Name, note.Says, Width, 44 + heights.Sum(), id);
        svg.Add(Svg.Rect(2, 2, Width - 4, 40 + heights.Sum(), Svg.Sheet, Svg.Ink), Svg.Text(16, 28, note.Name, 16, weight: "700"));
        var y = 40.0;
        foreach (var (index, row) in note.Rows.Index())
        {
            svg.Add(Svg.Line(16, y, Width - 16, y, Svg.Rule, 1));
            foreach (var (at, line) in lines[index].Index()) svg.Add(Svg.Text(16, y + 19 + at * 18, line, 15, Svg.Soft));
            svg.Add(Svg.Text(Width - 16, y + heights[index] - 9, row.Number, 19, anchor: "end", weight: "700"));
            y += heights[index];
        }

        return svg;
    }
}

using System.Globalization;
using Microsoft.Extensions.Localization;
using PdfSharp.Pdf;
using Training.Records.Certifying;
using Training.Records.Proving;
using Training.Sequencing;
using Training.Web.Drawings;
using Training.Web.Features.Shared;

namespace Training.Web.Printing;

/// <summary>A proof on paper: an A4 sheet for up to twelve records a page, or a card for each record.</summary>
/// <param name="rooms">Names the provider.</param>
/// <param name="words">The sentences.</param>
/// <param name="titled">What a competency is called in the language of the sheet, by its title in the default language.</param>
public sealed class ProofPaper(Rooms rooms, IStringLocalizer<Words> words, Func<string, string> titled)
{
    /// <summary>How many records stand on one A4 page.</summary>
    public const int RecordsAPage = 12;

    private const double Margin = 18;
    private const double RowHeight = 14.5;

    // ISO 216 A4 and ISO/IEC 7810 ID-1, in millimetres.
    private static readonly (double Width, double Height) A4 = (210, 297);
    private static readonly (double Width, double Height) Id1 = (85.6, 54);

    /// <summary>The sheet as PDF.</summary>
    /// <param name="proof">What the proof shows.</param>
    /// <param name="link">Its address.</param>
    public Outcome<byte[], Refusal> Sheet(ShownProof.Shown proof, string link) => Print(proof, (proof, document) =>
    {
        var pages = proof.Records.Chunk(RecordsAPage).ToList();
        foreach (var (number, records) in pages.Index())
            Page(document, proof, records, link, pages.Count > 1 ? words["Page {0} of {1}", number + 1, pages.Count] : "");
        if (proof.Job is { } job) new JobSheet(words).Draw(document, job, proof.Shop, titled);
    });

    /// <summary>The cards as PDF, a page of their size each. Only records that hold have one.</summary>
    /// <param name="proof">What the proof shows.</param>
    /// <param name="link">Its address.</param>
    public Outcome<byte[], Refusal> Cards(ShownProof.Shown proof, string link)
    {
        ArgumentNullException.ThrowIfNull(proof);
        var holding = proof.Records.Where(record => record.Holds).ToList();
        if (holding.Count == 0) return new Refusal("None of these records holds on that day, so there is no card to print.");
        return Print(proof with { Records = holding }, (proof, document) =>
        {
            foreach (var record in proof.Records) Card(document, proof, record, link);
        });
    }

    /// <summary>The language that a proof is printed in: its owner's, or English where that cannot be printed.</summary>
    /// <param name="proof">What the proof shows.</param>
    public static Tongue LanguageOf(ShownProof.Shown proof)
    {
        ArgumentNullException.ThrowIfNull(proof);
        return Tongues.Find(proof.Language) is { CanBePrinted: true } tongue ? tongue : Tongues.All[0];
    }

    private Outcome<byte[], Refusal> Print(ShownProof.Shown proof, Action<ShownProof.Shown, PdfDocument> draw) => Tongues.In(
        LanguageOf(proof).Code,
        () => Written(proof with { Records = [.. proof.Records.Select(record => record with { CompetencyTitle = titled(record.CompetencyTitle) })] }, draw));

    private static Outcome<byte[], Refusal> Written(ShownProof.Shown proof, Action<ShownProof.Shown, PdfDocument> draw)
    {
        if (PrintFonts.OfMachine is null)
            return new Refusal("This server has no letters to print with. Install the fonts of DejaVu, Noto or Liberation; until then print the page itself.");
        string[] texts = [proof.Shop, proof.ForWhom ?? "", proof.Job?.Customer ?? "", proof.Job?.Chassis ?? "", .. proof.Records.SelectMany(record => new[] { record.Name, record.CompetencyTitle })];
        if (texts.FirstOrDefault(text => !PrintFonts.CanWrite(text)) is { } cannot)
            return new Refusal($"The PDF cannot write “{cannot}” as it should be. Print the page itself: it can.");
        using var document = new PdfDocument();
        draw(proof, document);
        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    private void Page(PdfDocument document, ShownProof.Shown proof, IReadOnlyList<ShownRecord> records, string link, string pages)
    {
        document.Info.Title = words["Proof of competency, {0}", proof.Shop];
        using var sheet = new Sheet(document, A4.Width, A4.Height);
        var width = A4.Width - 2 * Margin;
        sheet.Write(words["Proof of competency"], Margin, 26, 20, width - 30, bold: true);
        sheet.Write(pages, A4.Width - Margin - 28, 26, 9, 28);
        sheet.Write(proof.Shop, Margin, 35, 13, width);
        if (proof.ForWhom is { } customer) sheet.Write(words["For {0}", customer], Margin, 42, 11, width);
        sheet.Write(words["State as of {0}", Dates.Day(proof.On)], Margin, 49, 11, width);
        sheet.Write(proof.AllHold ? words["Yes: each of these records holds on that day."] : words["No: not every one of these records holds on that day."],
            Margin, 58, 12, width, bold: true);
        sheet.Rule(Margin, 62, width);
        foreach (var (row, record) in records.Index()) Row(sheet, record, 62 + row * RowHeight, width);
        Foot(sheet, proof, link, width);
    }

    private void Row(Sheet sheet, ShownRecord record, double top, double width)
    {
        sheet.Mark(record.Holds, Margin, top + 4.2, 4);
        sheet.Write(record.Name, Margin + 8, top + 6, 11.5, 100, bold: true);
        sheet.Write(record.CompetencyTitle, Margin + 8, top + 11.2, 9.5, 100);
        sheet.Write(StateOf(record.Standing), Margin + 112, top + 6, 11, width - 112, bold: true);
        sheet.Write(TimesOf(record.Standing), Margin + 112, top + 11.2, 9.5, width - 112);
        sheet.Rule(Margin, top + RowHeight, width);
    }

    private void Foot(Sheet sheet, ShownProof.Shown proof, string link, double width)
    {
        const double top = 62 + RecordsAPage * RowHeight + 4;
        const double side = 36;
        sheet.Code(QrCode.Of(link), Margin, top, side);
        var (x, room) = (Margin + side + 5, width - side - 5);
        var y = sheet.WriteLines(words["This sheet is true of the day that stands on it. The square code and the link lead to the records of {0} as they stand when you look.", rooms.Provider], x, top + 5, 9.5, room);
        y = sheet.WriteLines(link, x, y + 1, 8, room);
        y = sheet.WriteLines(words["The shop made this proof on {0}.", Dates.Moment(proof.MadeAt, Dates.NoShop)], x, y + 1, 9, room);
        sheet.WriteLines(words["A disc means yes, a square means no."], x, y + 1, 9, room);
    }

    private void Card(PdfDocument document, ShownProof.Shown proof, ShownRecord record, string link)
    {
        document.Info.Title = words["Record cards, {0}", proof.Shop];
        using var card = new Sheet(document, Id1.Width, Id1.Height);
        const double margin = 5;
        const double side = 27;
        var width = Id1.Width - 2 * margin;
        card.Write(rooms.Provider, margin, 7.5, 7, width);
        card.Write(record.Name, margin, 14.5, 13, width, bold: true);
        card.Write(proof.Shop, margin, 19, 8, width);
        card.Rule(margin, 21.5, width);
        card.Code(QrCode.Of(link), Id1.Width - margin - side + 1, 23, side);
        var y = card.WriteLines(record.CompetencyTitle, margin, 27, 9, width - side - 1, bold: true);
        var standing = record.Standing!;
        card.Write(words["since {0}", Dates.Day(standing.Since)], margin, y + 1, 8, width - side - 1);
        card.Write(words["until {0}", Dates.Day(standing.Until)], margin, y + 5.2, 8, width - side - 1);
        card.Write(words["as of {0}; the code says how it stands now", Dates.Day(proof.On)], margin, 51, 6, width);
    }

    private string StateOf(RecordStanding? standing) => standing?.State switch
    {
        RecordState.Current => words["Current"],
        RecordState.Due => words["Due for renewal"],
        RecordState.Expired => words["Expired"],
        RecordState.Suspended => words["Suspended"],
        RecordState.Withdrawn => words["Withdrawn"],
        _ => words["No record"],
    };

    private static string TimesOf(RecordStanding? standing) =>
        standing is null ? "" : string.Create(CultureInfo.InvariantCulture, $"{Dates.Day(standing.Since)} – {Dates.Day(standing.Until)}");
}

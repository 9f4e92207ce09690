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
    private const double JobGap = 10;

    // Where the rows of a full page end, and the foot with the square code begins.
    private const double Bottom = 62 + RecordsAPage * RowHeight;

    // ISO 216 A4 and ISO/IEC 7810 ID-1, in millimetres.
    private static readonly (double Width, double Height) A4 = (210, 297);
    private static readonly (double Width, double Height) Id1 = (85.6, 54);

    /// <summary>The sheet as PDF.</summary>
    /// <param name="proof">What the proof shows.</param>
    /// <param name="link">Its address.</param>
    public Outcome<byte[], Refusal> Sheet(ShownProof.Shown proof, string link) => Print(proof, (proof, document) =>
    {
        // A proof in which nobody is left is a page all the same.
        var pages = proof.Records.Count == 0 ? [[]] : proof.Records.Chunk(RecordsAPage).ToList();
        var job = proof.Job is { } days ? new JobSheet(words, days) : null;
        var beside = job is not null && pages.Count == 1 && RowsEnd(pages[0].Length) + JobGap + job.Height <= Bottom ? job : null;
        foreach (var (number, records) in pages.Index())
            Page(document, proof, records, link, pages.Count > 1 ? words["Page {0} of {1}", number + 1, pages.Count] : "", beside);
        if (job is not null && beside is null) JobPages(document, job, proof, link);
    });

    /// <summary>The cards as PDF, a page of their size each. Only records that hold have one.</summary>
    /// <param name="proof">What the proof shows.</param>
    /// <param name="link">Its address.</param>
    public Outcome<byte[], Refusal> Cards(ShownProof.Shown proof, string link)
    {
        ArgumentNullException.ThrowIfNull(proof);
        var holding = proof.Records.Where(record => record.Holds).ToList();
        if (holding.Count == 0) return new Refusal("None of these records holds on that day, so there is no card to print.");
        // A card without a name is nobody's.
        holding = [.. holding.Where(record => PrintFonts.CanWrite(record.Name))];
        if (holding.Count == 0) return new Refusal("The letters of these names cannot be set in the PDF yet, so there is no card to print. Print the page itself: it can.");
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

    /// <summary>The names whose letters the PDF cannot set: it refers to the page in their place.</summary>
    /// <param name="proof">What the proof shows.</param>
    public static IReadOnlyList<string> CannotWrite(ShownProof.Shown proof)
    {
        ArgumentNullException.ThrowIfNull(proof);
        string?[] texts = [proof.Shop, proof.ForWhom, proof.Job?.Customer, proof.Job?.Chassis, .. proof.Records.Select(record => record.Name)];
        return [.. texts.OfType<string>().Where(text => !PrintFonts.CanWrite(text)).Distinct()];
    }

    private Outcome<byte[], Refusal> Print(ShownProof.Shown proof, Action<ShownProof.Shown, PdfDocument> draw) => Tongues.In(
        LanguageOf(proof).Code, () => Written(Printable(proof), draw));

    /// <summary>The proof in the words of the sheet; what its letters cannot write is looked up on the page, and the others are printed.</summary>
    private ShownProof.Shown Printable(ShownProof.Shown proof) => proof with
    {
        Shop = Name(proof.Shop),
        ForWhom = proof.ForWhom is { } customer ? Name(customer) : null,
        Records = [.. proof.Records.Select(record => record with { Name = Name(record.Name), CompetencyTitle = titled(record.CompetencyTitle) })],
        Job = proof.Job is { } job
            ? job with
            {
                Customer = Name(job.Customer),
                Chassis = Name(job.Chassis),
                People = [.. job.People.Select(person => person with { Name = Name(person.Name), CompetencyTitle = titled(person.CompetencyTitle) })],
            }
            : null,
    };

    private string Name(string name) => PrintFonts.CanWrite(name) ? name : words["name in another script: see the page"];

    private static Outcome<byte[], Refusal> Written(ShownProof.Shown proof, Action<ShownProof.Shown, PdfDocument> draw)
    {
        if (PrintFonts.OfMachine is null)
            return new Refusal("This server has no letters to print with. Install the fonts of DejaVu, Noto or Liberation; until then print the page itself.");
        using var document = new PdfDocument();
        draw(proof, document);
        using var stream = new MemoryStream();
        document.Save(stream);
        return stream.ToArray();
    }

    private void Page(PdfDocument document, ShownProof.Shown proof, IReadOnlyList<ShownRecord> records, string link, string pages, JobSheet? job)
    {
        document.Info.Title = words["Proof of competency, {0}", proof.Shop];
        using var sheet = new Sheet(document, A4.Width, A4.Height);
        var width = A4.Width - 2 * Margin;
        Head(sheet, proof, pages, width);
        if (proof.ForWhom is { } customer) sheet.Write(words["For {0}", customer], Margin, 42, 11, width);
        sheet.Write(words["State as of {0}", Dates.Day(proof.On)], Margin, 49, 11, width);
        sheet.Write(proof.AllHold ? words["Yes: each of these records holds on that day."] : words["No: not every one of these records holds on that day."],
            Margin, 58, 12, width, bold: true);
        sheet.Rule(Margin, 62, width);
        foreach (var (row, record) in records.Index()) Row(sheet, record, RowsEnd(row), width);
        job?.Draw(sheet, RowsEnd(records.Count) + JobGap, Bottom, Margin, width);
        Foot(sheet, proof, link, width);
    }

    /// <summary>The days of the job on pages of their own, each with the square code.</summary>
    private void JobPages(PdfDocument document, JobSheet job, ShownProof.Shown proof, string link)
    {
        var width = A4.Width - 2 * Margin;
        for (var done = 0; done < job.Lines();)
        {
            using var sheet = new Sheet(document, A4.Width, A4.Height);
            Head(sheet, proof, "", width);
            done = job.Draw(sheet, 46, Bottom, Margin, width, done);
            Foot(sheet, proof, link, width);
        }
    }

    private static double RowsEnd(int rows) => 62 + rows * RowHeight;

    private void Head(Sheet sheet, ShownProof.Shown proof, string pages, double width)
    {
        sheet.Write(words["Proof of competency"], Margin, 26, 20, width - 30, bold: true);
        sheet.Write(pages, A4.Width - Margin - 28, 26, 9, 28);
        sheet.Write(proof.Shop, Margin, 35, 13, width);
    }

    private void Row(Sheet sheet, ShownRecord record, double top, double width)
    {
        sheet.Mark(record.Holds, Margin, top + 4.2, 4);
        sheet.WriteWhole(record.Name, Margin + 8, top + 6.6, 11.5, 100, bold: true);
        sheet.Write(record.CompetencyTitle, Margin + 8, top + 11.2, 9.5, 100);
        sheet.Write(record.Doubt is null ? StateOf(record.Standing) : words["Not proved"], Margin + 112, top + 6, 11, width - 112, bold: true);
        sheet.Write(record.Doubt is null ? TimesOf(record.Standing) : "", Margin + 112, top + 11.2, 9.5, width - 112);
        sheet.Rule(Margin, top + RowHeight, width);
    }

    private void Foot(Sheet sheet, ShownProof.Shown proof, string link, double width)
    {
        const double top = Bottom + 4;
        const double side = 36;
        sheet.Code(QrCode.Of(link), Margin, top, side);
        var (x, room) = (Margin + side + 5, width - side - 5);
        var y = sheet.WriteLines(words["This sheet is true of the day that stands on it. The square code and the link lead to the records of {0} as they stand when you look.", rooms.Provider], x, top + 5, 9.5, room);
        y = sheet.WriteLines(link, x, y + 1, 8, room);
        y = sheet.WriteLines(words["The shop made this proof on {0}.", Dates.Moment(proof.MadeAt, Dates.NoShop)], x, y + 1, 9, room);
        y = sheet.WriteLines(words["A disc means yes, a square means no."], x, y + 1, 9, room);
        if (proof.NamesRemoved.Count == 1)
            sheet.WriteLines(words["One person's name was removed at their wish; the log still holds the record."], x, y + 1, 9, room);
        else if (proof.NamesRemoved.Count > 1)
            sheet.WriteLines(words["The names in {0} records were removed at the people's wish; the log still holds the records.", proof.NamesRemoved.Count], x, y + 1, 9, room);
    }

    private void Card(PdfDocument document, ShownProof.Shown proof, ShownRecord record, string link)
    {
        document.Info.Title = words["Record cards, {0}", proof.Shop];
        using var card = new Sheet(document, Id1.Width, Id1.Height);
        const double margin = 5;
        const double side = 27;
        var width = Id1.Width - 2 * margin;
        card.Write(rooms.Provider, margin, 7.5, 7, width);
        card.WriteWhole(record.Name, margin, 14.8, 13, width, bold: true);
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

using System.Diagnostics;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Localization;
using NodaTime;
using Training.Records.Certifying;
using Training.Records.Proving;
using Training.Web.Features.Shared;
using Training.Web.Printing;
using UglyToad.PdfPig;
using ZXing;
using ZXing.Common;

namespace Training.Web.Tests.Printing;

public sealed class ProofPaperTests
{
    private const string Link = "https://records.example/p/c2VjcmV0LXNlY3JldC1zZWNyZXQtc2VjcmV0LXNlY3JldC1zZQ";
    private static readonly ProofPaper Paper = new(
        new Rooms(new ConfigurationBuilder().AddInMemoryCollection([new("Provider:Name", "Eastvale Training Centre")]).Build()), new EnglishWords(), title => title);

    [Fact]
    public void A_sheet_tells_who_may_do_what_since_when_and_until_when()
    {
        using var pdf = PdfDocument.Open(Paper.Sheet(Proof(1), Link).Value);
        var text = TextOf(pdf, 1);
        foreach (var part in new[] { "Quillmoor Coachworks", "Larkfield Haulage", "Person 1", "Electrical isolation", "3 Feb 2026", "2 Feb 2028", "14 Mar 2026", "Eastvale" })
            Assert.Contains(part, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(12, 1)]
    [InlineData(13, 2)]
    [InlineData(25, 3)]
    public void Up_to_twelve_records_stand_on_a_page_of_A4(int records, int pages)
    {
        using var pdf = PdfDocument.Open(Paper.Sheet(Proof(records), Link).Value);
        Assert.Equal(pages, pdf.NumberOfPages);
        var page = pdf.GetPage(1);
        Assert.Equal((210, 297), (Math.Round(page.Width * 25.4 / 72), Math.Round(page.Height * 25.4 / 72)));
        for (var record = 1; record <= records; record++)
            Assert.Contains($"Person {record} ", TextOf(pdf, (record + 11) / 12) + " ", StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_written_beyond_the_edge_of_the_paper_however_long_a_name_is()
    {
        var proof = Proof(12, new string('W', 40) + " " + new string('M', 60));
        using var pdf = PdfDocument.Open(Paper.Sheet(proof, Link).Value);
        var page = pdf.GetPage(1);
        Assert.NotEmpty(page.Letters);
        Assert.All(page.Letters, letter =>
        {
            Assert.InRange(letter.BoundingBox.Right, 0, page.Width - 20);
            Assert.InRange(letter.BoundingBox.Bottom, 20, page.Height);
        });
    }

    [Fact]
    public void A_card_is_as_large_as_a_bank_card_and_there_is_one_for_each_record_that_holds()
    {
        var proof = Proof(3);
        proof = proof with { Records = [.. proof.Records, new("Expired One", "Electrical isolation of a chassis", Standing(RecordState.Expired))] };
        using var pdf = PdfDocument.Open(Paper.Cards(proof, Link).Value);
        Assert.Equal(3, pdf.NumberOfPages);
        // ISO/IEC 7810 ID-1: 85.6 × 54 mm (53.98 rounded).
        Assert.Equal((85.6, 54.0), (Math.Round(pdf.GetPage(1).Width * 25.4 / 72, 1), Math.Round(pdf.GetPage(1).Height * 25.4 / 72, 1)));
        Assert.Contains("Person 1", TextOf(pdf, 1), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_square_code_of_a_printed_sheet_and_of_a_card_leads_to_the_proof()
    {
        Assert.Equal(Link, await CodeOn(Paper.Sheet(Proof(12), Link).Value));
        Assert.Equal(Link, await CodeOn(Paper.Cards(Proof(1), Link).Value));
    }

    [Fact]
    public void A_name_that_the_letters_cannot_write_is_looked_up_on_the_page_and_all_others_are_printed()
    {
        var one = Proof(1, "अमर सिंह").Records[0];
        var proof = Proof(3) with { Records = [one, .. Proof(2).Records] };
        Assert.Equal(["अमर सिंह"], ProofPaper.CannotWrite(proof));
        using var pdf = PdfDocument.Open(Paper.Sheet(proof, Link).Value);
        foreach (var part in new[] { "name in another script: see the page", "Person 1", "Person 2" })
            Assert.Contains(part, TextOf(pdf, 1), StringComparison.Ordinal);
        using var cards = PdfDocument.Open(Paper.Cards(proof, Link).Value);
        Assert.Equal(2, cards.NumberOfPages);
        Assert.False(Paper.Cards(proof with { Records = [one] }, Link).IsOk);
        Assert.Empty(ProofPaper.CannotWrite(Proof(1, "Łukasz Şahin Nguyễn Дмитро")));
    }

    [Theory]
    [InlineData("Maria Theresa Wilhelmina Konstantinopolitanska Vandenberghe-Ouedraogo Fernandez de la Vega y Mendoza")]
    [InlineData("WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW")]
    public void A_name_of_a_hundred_letters_is_written_whole(string name)
    {
        using var sheet = PdfDocument.Open(Paper.Sheet(Proof(12, name), Link).Value);
        using var card = PdfDocument.Open(Paper.Cards(Proof(1, name), Link).Value);
        foreach (var page in new[] { sheet.GetPage(1), card.GetPage(1) })
        {
            var letters = string.Concat(page.Letters.Select(letter => letter.Value));
            Assert.DoesNotContain("…", letters, StringComparison.Ordinal);
            Assert.Contains(name.Replace(" ", "", StringComparison.Ordinal), letters.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
            Assert.All(page.Letters, letter => Assert.InRange(letter.BoundingBox.Right, 0, page.Width - 10));
        }
    }

    [Fact]
    public async Task The_days_of_a_job_stand_on_the_first_page_where_there_is_room_and_every_page_has_the_code()
    {
        using var one = PdfDocument.Open(Paper.Sheet(OfJob(2), Link).Value);
        Assert.Equal(1, one.NumberOfPages);
        foreach (var part in new[] { "On the days of the job", "K26-0142", "Person 2 of the shop, Electrical", "A disc means yes" })
            Assert.Contains(part, TextOf(one, 1), StringComparison.Ordinal);
        var eleven = Paper.Sheet(OfJob(11), Link).Value;
        using var two = PdfDocument.Open(eleven);
        Assert.Equal(2, two.NumberOfPages);
        Assert.Contains("On the days of the job", TextOf(two, 2), StringComparison.Ordinal);
        Assert.Equal(Link, await CodeOn(eleven, 2));
    }

    [Fact]
    public void A_name_that_was_removed_is_told_in_a_sentence()
    {
        using var pdf = PdfDocument.Open(Paper.Sheet(Proof(2) with { NamesRemoved = [Instant.FromUtc(2026, 3, 1, 0, 0)] }, Link).Value);
        Assert.Contains("One person's name was removed at their wish", TextOf(pdf, 1), StringComparison.Ordinal);
    }

    private static ShownProof.Shown OfJob(int people)
    {
        var proof = Proof(people);
        return proof with
        {
            Job = new("Larkfield Haulage", "K26-0142", new(2026, 3, 10), new(2026, 3, 12), proof.On,
                [.. proof.Records.Select(record => new ShownJobPerson(record.Record, record.Name, record.CompetencyTitle, [new(new(2026, 3, 10), new(2026, 3, 12), true, RecordState.Current)]))]),
        };
    }

    [Theory]
    [InlineData("es", "Prueba", "es")]
    [InlineData("en", "Electrical isolation", "en")]
    [InlineData("hi", "Electrical isolation", "en")]
    public void A_sheet_is_written_in_the_owners_language_where_its_letters_can_be_shaped(string language, string title, string printed)
    {
        var paper = new ProofPaper(
            new Rooms(new ConfigurationBuilder().Build()), new WordBook(), known => Tongues.Current.Code == "en" ? known : "Prueba");
        var proof = Proof(1) with { Language = language };
        Assert.Equal(printed, ProofPaper.LanguageOf(proof).Code);
        using var pdf = PdfDocument.Open(paper.Sheet(proof, Link).Value);
        Assert.Contains(title, TextOf(pdf, 1), StringComparison.Ordinal);
        Assert.Equal(language != "es", TextOf(pdf, 1).Contains("Proof of competency", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_nothing_holds_there_is_no_card_to_print()
    {
        var proof = Proof(1) with { Records = [new("Expired One", "Electrical isolation of a chassis", Standing(RecordState.Expired))] };
        Assert.False(Paper.Cards(proof, Link).IsOk);
    }

    private static ShownProof.Shown Proof(int records, string? name = null) => new(
        "Quillmoor Coachworks", "Larkfield Haulage", Instant.FromUtc(2026, 3, 14, 9, 30), new(2026, 3, 14), AllHold: true,
        [.. Enumerable.Range(1, records).Select(number =>
            new ShownRecord(name ?? $"Person {number} of the shop", "Electrical isolation of a chassis", Standing(RecordState.Current)))]);

    private static RecordStanding Standing(RecordState state) => new(state, new(2026, 2, 3), new(2028, 2, 2), new(2027, 11, 2));

    private static string TextOf(PdfDocument pdf, int page) => string.Join(' ', pdf.GetPage(page).GetWords().Select(word => word.Text));

    // A page as a grey picture of 200 dots an inch, read as a phone would read it.
    private static async Task<string?> CodeOn(byte[] pdf, int page = 1)
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("proof-paper-").FullName, "page.pdf");
        await File.WriteAllBytesAsync(file, pdf, TestContext.Current.CancellationToken);
        var start = new ProcessStartInfo("pdftoppm", ["-gray", "-r", "200", "-f", $"{page}", "-l", $"{page}", "-singlefile", file, Path.ChangeExtension(file, null)]);
        using var process = Process.Start(start)!;
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        var (width, height, pixels) = GreyMap(await File.ReadAllBytesAsync(Path.ChangeExtension(file, "pgm"), TestContext.Current.CancellationToken));
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        var picture = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(pixels, width, height, RGBLuminanceSource.BitmapFormat.Gray8)));
        return new MultiFormatReader { Hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true } }.decode(picture)?.Text;
    }

    // A binary portable grey map: "P5", width, height and the greatest value, each ended by one white space, then a byte a pixel.
    private static (int Width, int Height, byte[] Pixels) GreyMap(byte[] file)
    {
        var fields = new List<string>();
        var at = 0;
        while (fields.Count < 4)
        {
            var end = Array.FindIndex(file, at, each => each is (byte)' ' or (byte)'\n');
            fields.Add(System.Text.Encoding.ASCII.GetString(file, at, end - at));
            at = end + 1;
        }

        return (int.Parse(fields[1], System.Globalization.CultureInfo.InvariantCulture),
            int.Parse(fields[2], System.Globalization.CultureInfo.InvariantCulture), file[at..]);
    }

    private sealed class EnglishWords : IStringLocalizer<Words>
    {
        public LocalizedString this[string name] => new(name, name);

        public LocalizedString this[string name, params object[] arguments] =>
            new(name, string.Format(System.Globalization.CultureInfo.InvariantCulture, name, arguments));

        public IEnumerable<LocalizedString> GetAllStrings(bool includeParentCultures) => [];
    }
}

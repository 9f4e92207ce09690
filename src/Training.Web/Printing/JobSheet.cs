using Microsoft.Extensions.Localization;
using PdfSharp.Pdf;
using Training.Records.Proving;
using Training.Web.Features.Shared;

namespace Training.Web.Printing;

/// <summary>The pages of a printed proof that answer for the days of its job.</summary>
/// <param name="words">The sentences.</param>
internal sealed class JobSheet(IStringLocalizer<Words> words)
{
    private const double Margin = 18;
    private const double LineHeight = 6.5;
    private const double Bottom = 280;

    // ISO 216 A4, in millimetres.
    private static readonly (double Width, double Height) A4 = (210, 297);

    /// <summary>Draws as many pages as the people need.</summary>
    public void Draw(PdfDocument document, ShownJob job, string shop, Func<string, string> titled)
    {
        var lines = new Queue<(string Text, bool IsBold, bool? Mark)>(job.People.SelectMany(person => Lines(person, titled)));
        do
        {
            using var sheet = new Sheet(document, A4.Width, A4.Height);
            var width = A4.Width - (2 * Margin);
            sheet.Write(words["On the days of the job"], Margin, 26, 20, width, bold: true);
            sheet.Write(shop, Margin, 35, 13, width);
            sheet.Write(words["{0}: {1}, {2} to {3}", job.Customer, job.Chassis, Dates.Day(job.FirstDay), Dates.Day(job.LastDay)], Margin, 43, 11, width);
            sheet.Write(
                job.AllHeld ? words["Each of these people might do the work on every day."] : words["Not everybody might do the work on every day."],
                Margin, 52, 12, width, bold: true);
            if (job.Today < job.LastDay) sheet.Write(words["What is said of days to come holds if nothing happens."], Margin, 58, 9.5, width);
            sheet.Rule(Margin, 62, width);
            for (var top = 70.0; top < Bottom && lines.TryDequeue(out var line); top += LineHeight)
            {
                if (line.Mark is { } yes) sheet.Mark(yes, Margin + 8, top - 3, 3);
                sheet.Write(line.Text, line.Mark is null ? Margin : Margin + 14, top, line.IsBold ? 11.5 : 10, width - 14, line.IsBold);
            }
        }
        while (lines.Count > 0);
    }

    private IEnumerable<(string Text, bool IsBold, bool? Mark)> Lines(ShownJobPerson person, Func<string, string> titled)
    {
        yield return ($"{person.Name}, {titled(person.CompetencyTitle)}", true, null);
        if (person.Held)
        {
            yield return (words["yes, on every day"], false, true);
            yield break;
        }

        foreach (var span in person.Days)
            yield return (words[span.Holds ? "{0} to {1}: yes" : "{0} to {1}: no", Dates.Day(span.From), Dates.Day(span.To)], false, span.Holds);
    }
}

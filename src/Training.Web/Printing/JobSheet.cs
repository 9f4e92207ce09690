using Microsoft.Extensions.Localization;
using Training.Records.Proving;
using Training.Web.Features.Shared;

namespace Training.Web.Printing;

/// <summary>The part of a printed proof that answers for the days of its job: below the records where there is room, else on pages of its own.</summary>
/// <param name="words">The sentences.</param>
/// <param name="job">The job, its texts as they can be printed.</param>
internal sealed class JobSheet(IStringLocalizer<Words> words, ShownJob job)
{
    private const double LineHeight = 6.5;
    private const double HeadHeight = 28;

    /// <summary>How high it is in one piece.</summary>
    public double Height => HeadHeight + (job.People.SelectMany(Lines).Count() * LineHeight);

    /// <summary>Draws as much as there is room for.</summary>
    /// <param name="sheet">The page.</param>
    /// <param name="top">Where it begins.</param>
    /// <param name="bottom">Where the room ends.</param>
    /// <param name="left">The left edge.</param>
    /// <param name="width">The width.</param>
    /// <param name="done">How many lines stand on pages before.</param>
    /// <returns>How many lines stand now; all of them where nothing is left.</returns>
    public int Draw(Sheet sheet, double top, double bottom, double left, double width, int done = 0)
    {
        sheet.Write(words["On the days of the job"], left, top, 12, width, bold: true);
        sheet.Write(words["{0}: {1}, {2} to {3}", job.Customer, job.Chassis, Dates.Day(job.FirstDay), Dates.Day(job.LastDay)], left, top + 6.5, 10, width);
        sheet.Write(
            job.AllHeld ? words["Each of these people might do the work on every day."] : words["Not everybody might do the work on every day."],
            left, top + 13, 10, width, bold: true);
        if (job.Today < job.LastDay) sheet.Write(words["What is said of days to come holds if nothing happens."], left, top + 18, 9, width);
        var lines = job.People.SelectMany(Lines).ToList();
        for (var at = top + HeadHeight - 3; done < lines.Count && at <= bottom; at += LineHeight, done++)
        {
            var (text, isBold, mark) = lines[done];
            if (mark is { } yes) sheet.Mark(yes, left + 8, at - 3, 3);
            if (isBold) sheet.WriteWhole(text, left, at, 10.5, width, bold: true);
            else sheet.Write(text, left + 14, at, 10, width - 14);
        }

        return done;
    }

    /// <summary>How many lines there are.</summary>
    public int Lines() => job.People.SelectMany(Lines).Count();

    private IEnumerable<(string Text, bool IsBold, bool? Mark)> Lines(ShownJobPerson person)
    {
        yield return ($"{person.Name}, {person.CompetencyTitle}", true, null);
        if (person.Held)
        {
            yield return (words["yes, on every day"], false, true);
            yield break;
        }

        foreach (var span in person.Days)
            yield return (words[span.Holds ? "{0} to {1}: yes" : "{0} to {1}: no", Dates.Day(span.From), Dates.Day(span.To)], false, span.Holds);
    }
}

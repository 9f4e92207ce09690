using System.Globalization;
using Microsoft.AspNetCore.Http.Extensions;
using Training.Records.Practising;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Practice;

/// <summary>
/// The address of a practice question with the answer so far: a page that is loaded again, or gone back to, shows the same
/// question and the same answer, and nothing is posted twice.
/// </summary>
public static class PracticeAddress
{
    /// <summary>The address.</summary>
    /// <param name="ticket">The question.</param>
    /// <param name="form">The answer so far.</param>
    /// <param name="isRefused">Whether it was handed in and not taken, so that the page says why.</param>
    public static string Of(PracticeTicket ticket, AnswerForm form, bool isRefused = false)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        ArgumentNullException.ThrowIfNull(form);
        var query = new QueryBuilder
        {
            { "kind", QuestionKinds.CodeOf(ticket.Kind) },
            { "seed", ticket.Seed.ToString(CultureInfo.InvariantCulture) },
        };
        foreach (var placed in form.Placed())
        {
            query.Add("step", placed.Id.Value);
            query.Add("seconds", placed.Seconds ?? "");
        }

        foreach (var option in (form.Option ?? []).Take(AnswerForm.MostEntries)) query.Add("option", option);
        if (form.Sheet is not null) query.Add("sheet", form.Sheet);
        if (!string.IsNullOrEmpty(form.Value)) query.Add("value", form.Value);
        if (!string.IsNullOrEmpty(form.Decision)) query.Add("decision", form.Decision);
        if (isRefused) query.Add("refused", "yes");
        return $"/scenarios/{ticket.Scenario}/practice{query}";
    }
}

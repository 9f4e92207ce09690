using System.Globalization;
using Training.Records.Practising;
using Training.Web.Features.Shared;

namespace Training.Web.Features.Practice;

/// <summary>A practice question with its answer sheet.</summary>
/// <param name="Question">The question.</param>
/// <param name="Sheet">The sheet.</param>
public sealed record PracticePage(QuestionPage Question, Sheet Sheet);

/// <summary>What names a practice question, as the form carries it.</summary>
public sealed class PracticeTicketForm
{
    /// <summary>How it is put.</summary>
    public string? Kind { get; init; }

    /// <summary>The publication that it was drawn from.</summary>
    public int Publication { get; init; }

    /// <summary>The seed of the order in which things are offered.</summary>
    public long Seed { get; init; }

    /// <summary>The key of this try, so that one sent twice counts once.</summary>
    public Guid Key { get; init; }

    /// <summary>The hidden fields of a question.</summary>
    /// <param name="ticket">What names the question.</param>
    /// <param name="key">The key of this try.</param>
    public static Dictionary<string, string> Of(PracticeTicket ticket, Guid key)
    {
        ArgumentNullException.ThrowIfNull(ticket);
        return new()
        {
            ["kind"] = QuestionKinds.CodeOf(ticket.Kind),
            ["publication"] = ticket.Publication.ToString(CultureInfo.InvariantCulture),
            ["seed"] = ticket.Seed.ToString(CultureInfo.InvariantCulture),
            ["key"] = key.ToString(),
        };
    }
}

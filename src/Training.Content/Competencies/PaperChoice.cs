using System.Collections.Immutable;
using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Content.Competencies;

/// <summary>
/// The questions of a paper, chosen so that as few as can be tell of each other and, of all such choices, so that they are
/// the least used. Found by exact search: line by line, with what cannot be better any more left out.
/// </summary>
public sealed class PaperChoice
{
    // Far above what any blueprint of people's papers needs; a monstrous one is answered by the best found until then.
    private const int MostSteps = 200_000;

    private readonly IReadOnlyList<Line> lines;
    private (int Tells, int Uses) best = (int.MaxValue, int.MaxValue);
    private ImmutableStack<PaperOffer> chosen = [];
    private int steps;

    private PaperChoice(IReadOnlyList<Line> lines) => this.lines = lines;

    /// <summary>What is asked, in the lines' order.</summary>
    public IReadOnlyList<PaperOffer> Asked => [.. chosen.Reverse()];

    /// <summary>How many pairs of its questions tell of each other; at best none.</summary>
    public int Tells => best.Tells;

    /// <summary>Whether no choice is better; false only where there were too many to look at.</summary>
    public bool IsBest => steps <= MostSteps;

    /// <summary>Chooses.</summary>
    /// <param name="offered">The lines of the blueprint, each with at least as many questions as it draws.</param>
    /// <param name="uses">How often a question is used already; null where none is.</param>
    public static PaperChoice Of(IEnumerable<PaperOffers> offered, Func<PaperOffer, int>? uses = null)
    {
        var choice = new PaperChoice([.. offered.Select(line => new Line(
            [.. line.From.Select(offer => (offer, uses?.Invoke(offer) ?? 0)).OrderBy(offer => offer.Item2)], line.Count))]);
        choice.Search(0, 0, 0, [], 0, 0);
        return choice;
    }

    /// <summary>Goes on with a line from a place in it, so many of it taken.</summary>
    private void Search(int line, int from, int taken, ImmutableStack<PaperOffer> asked, int tells, int used)
    {
        if (line < lines.Count && taken == lines[line].Count)
        {
            Search(line + 1, 0, 0, asked, tells, used);
            return;
        }

        if (++steps > MostSteps && best.Tells < int.MaxValue) return;
        if ((tells, used + LeastUses(line, from, taken)).CompareTo(best) >= 0) return;
        if (line == lines.Count)
        {
            (best, chosen) = ((tells, used), asked);
            return;
        }

        var seen = new HashSet<(QuestionKind, ProcedureId?, string, int)>();
        for (var at = from; at <= lines[line].Offers.Length - (lines[line].Count - taken); at++)
        {
            var (offer, uses) = lines[line].Offers[at];
            // What differs from an earlier one in nothing that counts would find nothing better.
            if (!seen.Add((offer.Kind, offer.Procedure, offer.Decoys, uses))) continue;
            Search(line, at + 1, taken + 1, asked.Push(offer), tells + asked.Count(other => other.TellsOf(offer)), used + uses);
        }
    }

    /// <summary>What the rest is used at least, whatever tells of what: the offers of a line stand by their uses.</summary>
    private int LeastUses(int line, int from, int taken)
    {
        var least = 0;
        for (var at = line; at < lines.Count; at++)
        {
            var (begin, missing) = at == line ? (from, lines[at].Count - taken) : (0, lines[at].Count);
            for (var offer = begin; offer < begin + missing && offer < lines[at].Offers.Length; offer++) least += lines[at].Offers[offer].Uses;
        }

        return least;
    }

    private sealed record Line((PaperOffer Offer, int Uses)[] Offers, int Count);
}

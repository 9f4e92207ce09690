using Training.Content.Competencies;
using Training.Content.Yaml;
using Training.Sequencing.Procedures;

namespace Training.Content.Links;

/// <summary>A paper can be drawn in which no question shows anything of what another asks, and each scenario of it some time.</summary>
internal static class PaperTells
{
    public static void Check(CompetencyDraft competency, ContentDrafts drafts)
    {
        // What is wrong by itself is mended first.
        if (competency.Problems.HasErrors) return;
        PaperOffers[] lines = [.. competency.Draws.Select(draw => new PaperOffers([.. draw.From.Select(id => OfferOf(draw, id, drafts))], draw.Count))];
        var choice = PaperChoice.Of(lines);
        if (!choice.IsBest) return;
        if (choice.Tells > 0) Refuse(competency, choice);
        else
            foreach (var (at, line) in lines.Index())
                foreach (var (place, offer) in line.From.Index())
                    if (PaperChoice.Of(With(lines, at, place)) is { IsBest: true, Tells: > 0 })
                        competency.Problems.Remark(
                            competency.Draws[at].From[place].Place,
                            $"The scenario \"{offer.Scenario}\" is never drawn by this line: another question of each paper is about \"{offer.Procedure}\" or its mirror, and the one would show what the other asks. Take it out, or let the other line name other procedures, too.");
    }

    private static void Refuse(CompetencyDraft competency, PaperChoice choice)
    {
        var lines = competency.Draws.SelectMany(draw => Enumerable.Repeat(draw, draw.Count)).ToList();
        var (one, other) = (from later in Enumerable.Range(0, lines.Count)
                            from earlier in Enumerable.Range(0, later)
                            where choice.Asked[earlier].TellsOf(choice.Asked[later])
                            select (choice.Asked[earlier], later)).First();
        competency.Problems.Hold(
            lines[other].CountPlace,
            $"However this paper is drawn, one question shows what another asks, such as {Said(one)} and {Said(choice.Asked[other])}: a procedure is asked about once, or only to be put in order with the same decoys. Name scenarios of other procedures, draw fewer, or ask a reading.");
    }

    private static string Said(PaperOffer offer) => $"{Codes<Scenarios.QuestionKind>.Of(offer.Kind)} of \"{offer.Procedure}\"";

    /// <summary>The lines where one of them takes a certain question.</summary>
    private static IEnumerable<PaperOffers> With(PaperOffers[] lines, int at, int place) => lines.Index().SelectMany(line => line.Index != at
        ? [line.Item]
        : (PaperOffers[])[new([line.Item.From[place]], 1), new([.. line.Item.From.Where((_, other) => other != place)], line.Item.Count - 1)]);

    private static PaperOffer OfferOf(DrawDraft draw, YamlText id, ContentDrafts drafts)
    {
        var scenario = drafts.Scenarios[id.Text];
        var procedure = scenario.Procedure is { } named ? new ProcedureId(named.Text) : (ProcedureId?)null;
        return PaperOffer.Of(draw.Kind, new(id.Text), procedure, scenario.Show?.Select(decoy => decoy.Text)) with
        {
            Mirrors = procedure is { } known && drafts.Procedures.TryGetValue(known.Value, out var written) ? written.Procedure?.Mirror?.Of : null,
        };
    }
}

using Training.Content.Scenarios;
using Training.Sequencing.Procedures;

namespace Training.Content.Competencies;

/// <summary>A question that a paper could ask.</summary>
/// <param name="Kind">How it is put.</param>
/// <param name="Scenario">What it is about.</param>
/// <param name="Procedure">The procedure whose order it asks for or shows; null where it does neither, as with a reading.</param>
/// <param name="Decoys">Which decoys it offers, as a text that is the same where they are the same.</param>
public sealed record PaperOffer(QuestionKind Kind, ScenarioId Scenario, ProcedureId? Procedure, string Decoys)
{
    /// <summary>The procedure whose mirror that procedure is; null where it is none.</summary>
    public ProcedureId? Mirrors { get; init; }

    /// <summary>A scenario asked in a way.</summary>
    /// <param name="kind">How it is put.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="content">Where it stands; what is not there tells of nothing.</param>
    public static PaperOffer Of(QuestionKind kind, ScenarioId scenario, ContentLibrary content)
    {
        ArgumentNullException.ThrowIfNull(content);
        var found = content.FindScenario(scenario);
        return Of(kind, scenario, found?.Procedure, found?.Show?.Select(decoy => decoy.Value)) with
        {
            Mirrors = found?.Procedure is { } procedure ? content.FindProcedure(procedure)?.Procedure.Mirror?.Of : null,
        };
    }

    internal static PaperOffer Of(QuestionKind kind, ScenarioId scenario, ProcedureId? procedure, IEnumerable<string>? shown) => new(
        kind, scenario, kind == QuestionKind.Reading ? null : procedure,
        shown is null ? "all" : "only " + string.Join(' ', shown.Order(StringComparer.Ordinal)));

    /// <summary>
    /// Whether one of two questions of a paper shows something of what the other asks. Each kind but a whole job to be put
    /// in order shows a part of an order, or all of it with one thing wrong; all of it, read backwards, tells of the mirror's,
    /// too. Two jobs of one procedure show none; but what only one of them offers would be known for a decoy.
    /// </summary>
    /// <param name="other">The other question.</param>
    public bool TellsOf(PaperOffer other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (Procedure is null || other.Procedure is null) return false;
        if (Procedure != other.Procedure)
            return (Mirrors == other.Procedure || other.Mirrors == Procedure) && (TellsOfTheMirror(Kind, other.Kind) || TellsOfTheMirror(other.Kind, Kind));
        return Kind != QuestionKind.Order || other.Kind != QuestionKind.Order || Decoys != other.Decoys;
    }

    private static bool TellsOfTheMirror(QuestionKind shown, QuestionKind asked) =>
        shown == QuestionKind.FirstFault && asked is (QuestionKind.Order or QuestionKind.Finish);
}

/// <summary>What a line of a blueprint can be drawn from.</summary>
/// <param name="From">The questions, those first that are to be taken where nothing else decides.</param>
/// <param name="Count">How many of them are drawn.</param>
public sealed record PaperOffers(IReadOnlyList<PaperOffer> From, int Count);

using Training.Sequencing.Analysis;
using Training.Sequencing.Drawing;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;

namespace Training.Sequencing.Questions;

/// <summary>
/// At which step does a colleague's order first go wrong? Just one fault is in it. A step that came too soon may be
/// found at itself or at the wait that was too short. Who overlooks what can hurt somebody has answered unsafely.
/// </summary>
internal static class FirstFaultQuestion
{
    private static readonly FindingKind[] Kinds =
        [FindingKind.Order, FindingKind.State, FindingKind.TooSoon, FindingKind.Decoy];

    public static Outcome<ChoiceQuestion, Refusal> Draw(RightOrderDraw orders, IReadOnlyList<StepId> decoys, SeededDraw lots)
    {
        if (PlantedFault.Draw(orders, Kinds, decoys, lots) is not { } planted)
            return new Refusal("No fault can stand alone in an order of this procedure.");
        var entries = planted.Answer.Entries;
        var right = RightPlaces(orders.Grader.Procedure, planted);
        Option[] options = [.. entries.Select((_, at) => new Option(ChoiceQuestions.IdAt(at)) { Place = at + 1 })];
        return new ChoiceQuestion(
            new(ChoiceKind.FirstFault, entries, options),
            [.. options.Select(option => new Weighed(option.Id, right.Contains(option.Place!.Value)) { Risks = [planted.Finding], Replayed = planted.Answer })],
            [planted.Finding]);
    }

    private static HashSet<int> RightPlaces(Procedure procedure, PlantedFault planted)
    {
        HashSet<int> places = [planted.Place!.Value];
        if (planted.Finding.Kind != FindingKind.TooSoon) return places;
        for (var place = planted.Finding.Places[0] + 1; place < planted.Place; place++)
        {
            var id = planted.Answer.Entries[place - 1].Step;
            if (procedure.Steps.Any(step => step.Id == id && step.IsWait)) places.Add(place);
        }

        return places;
    }
}

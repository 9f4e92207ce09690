using Microsoft.Extensions.Localization;
using Training.Sequencing;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;
using Training.Web.Features.Shared;

namespace Training.Web.Drawings;

/// <summary>Makes the line plan of a procedure on one kind of vehicle: what must wait for what, as the engine has it.</summary>
public static class LinePlanOfProcedure
{
    /// <summary>Draws it as SVG.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <param name="words">The words of the language that the procedure's texts are in.</param>
    public static string Draw(Procedure procedure, VariantId? variant, IStringLocalizer<Words> words)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(words);
        var id = variant is { } kind ? $"plan-{procedure.Id}-{kind}" : $"plan-{procedure.Id}";
        return LinePlanDrawing.Draw(Of(procedure, variant, words), new(procedure.Title, words["after"]), id, LinePlanLook.Lesson);
    }

    /// <summary>The plan as plain data. A procedure that nobody can be graded by has steps and no lines.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    /// <param name="words">The words of the language that the procedure's texts are in.</param>
    public static LinePlanPicture Of(Procedure procedure, VariantId? variant, IStringLocalizer<Words> words)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(words);
        var grader = Grader.For(procedure, variant);
        var kind = grader.IsOk ? grader.Value.Variant : variant;
        var order = grader.IsOk ? grader.Value.Order() : new StepOrder([.. procedure.Steps.Select(step => step.Id)], []);
        var steps = order.Steps.Select(id => procedure.Steps.First(step => step.Id == id)).ToList();
        var places = order.Steps.Index().ToDictionary(item => item.Item, item => item.Index);
        return new(
            [.. steps.Select(step => Station(procedure, step, kind, places.ContainsKey, words))],
            [.. order.Waits.Select(wait => new LinePlanWait(places[wait.First], places[wait.Then]))]);
    }

    private static LinePlanStation Station(Procedure procedure, Step step, VariantId? kind, Func<StepId, bool> isThere, IStringLocalizer<Words> words)
    {
        var ways = step.Choice is null
            ? [step]
            : procedure.Steps.Where(other => other.Choice == step.Choice && other.IsFor(kind)).ToList();
        var notes = procedure.Rules.OfType<OrderRule>()
            .Where(rule => rule.AtLeast is not null && rule.Then.Contains(step.Id))
            .SelectMany(rule => rule.First.Where(isThere), (rule, first) => words["at least {0} after: {1}", Dates.Span(rule.AtLeast!.Value), TextOf(procedure, first)].Value);
        var note = string.Join("; ", (step.IsOptional ? [words["if needed"].Value] : Array.Empty<string>()).Concat(notes));
        return new(
            string.Join('\n', ways.Select((way, place) => place == 0 ? way.Do : words["or: {0}", way.Do].Value)),
            note.Length > 0 ? note : null,
            step.IsWait,
            step.IsOptional || ways.Count > 1);
    }

    private static string TextOf(Procedure procedure, StepId id) => procedure.Steps.First(step => step.Id == id).Do;
}

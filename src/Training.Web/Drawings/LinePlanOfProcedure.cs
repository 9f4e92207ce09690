using Training.Sequencing;
using Training.Sequencing.Ordering;
using Training.Sequencing.Procedures;

namespace Training.Web.Drawings;

/// <summary>Makes the line plan of a procedure on one kind of vehicle: what must wait for what, as the engine has it.</summary>
public static class LinePlanOfProcedure
{
    /// <summary>Draws it as SVG.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static string Draw(Procedure procedure, VariantId? variant)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var id = variant is { } kind ? $"plan-{procedure.Id}-{kind}" : $"plan-{procedure.Id}";
        return LinePlanDrawing.Draw(Of(procedure, variant), new(procedure.Title, "after"), id, LinePlanLook.Lesson);
    }

    /// <summary>The plan as plain data. A procedure that nobody can be graded by has steps and no lines.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static LinePlanPicture Of(Procedure procedure, VariantId? variant)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var grader = Grader.For(procedure, variant);
        var kind = grader.IsOk ? grader.Value.Variant : variant;
        var order = grader.IsOk ? grader.Value.Order() : new StepOrder([.. procedure.Steps.Select(step => step.Id)], []);
        var steps = order.Steps.Select(id => procedure.Steps.First(step => step.Id == id)).ToList();
        var places = order.Steps.Index().ToDictionary(item => item.Item, item => item.Index);
        return new(
            [.. steps.Select(step => Station(procedure, step, kind, places.ContainsKey))],
            [.. order.Waits.Select(wait => new LinePlanWait(places[wait.First], places[wait.Then]))]);
    }

    /// <summary>The steps in the order of the plan; where there are several ways, all of them at one place.</summary>
    /// <param name="procedure">The procedure.</param>
    /// <param name="variant">The kind of vehicle; null takes the first listed.</param>
    public static IReadOnlyList<IReadOnlyList<StepId>> StepsOf(Procedure procedure, VariantId? variant)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var grader = Grader.For(procedure, variant);
        if (!grader.IsOk) return [.. procedure.Steps.Select(step => new[] { step.Id })];
        return [.. grader.Value.Order().Steps.Select(id => procedure.Steps.First(step => step.Id == id)).Select(step =>
            step.Choice is null ? [step.Id] : procedure.Steps.Where(other => other.Choice == step.Choice).Select(other => other.Id).ToArray())];
    }

    private static LinePlanStation Station(Procedure procedure, Step step, VariantId? kind, Func<StepId, bool> isThere)
    {
        var ways = step.Choice is null
            ? [step]
            : procedure.Steps.Where(other => other.Choice == step.Choice && Exists(other, kind)).ToList();
        var notes = procedure.Rules.OfType<OrderRule>()
            .Where(rule => rule.AtLeast is not null && rule.Then.Contains(step.Id))
            .SelectMany(rule => rule.First.Where(isThere), (rule, first) => $"at least {rule.AtLeast} after: {TextOf(procedure, first)}");
        var note = string.Join("; ", (step.IsOptional ? ["if needed"] : Array.Empty<string>()).Concat(notes));
        return new(
            string.Join(", or: ", ways.Select(way => way.Do)),
            note.Length > 0 ? note : null,
            step.IsWait,
            step.IsOptional || ways.Count > 1);
    }

    private static bool Exists(Step step, VariantId? kind) =>
        step.Variants.Count == 0 || (kind is { } one && step.Variants.Contains(one));

    private static string TextOf(Procedure procedure, StepId id) => procedure.Steps.First(step => step.Id == id).Do;
}

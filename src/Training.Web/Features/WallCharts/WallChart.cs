using Microsoft.Extensions.Localization;
using Training.Sequencing.Procedures;
using Training.Web.Drawings;
using Training.Web.Features.Shared;

namespace Training.Web.Features.WallCharts;

/// <summary>
/// The order of a procedure as a sheet of A4 that hangs on the wall: the plan, what hurts whoever does not keep it, and
/// what must never be done. All of it comes from the procedure's file.
/// </summary>
/// <param name="Procedure">The procedure with its texts in the language of the chart.</param>
/// <param name="Order">Its order.</param>
/// <param name="Words">The words of that language.</param>
public sealed record WallChart(Procedure Procedure, ChartOrder Order, IStringLocalizer<Words> Words)
{
    /// <summary>How high the plan may be, in mm: what the head and the foot leave of a sheet that lies on its side.</summary>
    public const double PlanHeight = 163;

    private const double PlanWidth = 172;

    private readonly Dictionary<StepId, int> numbers = Order.Places.Index()
        .SelectMany(place => place.Item.Ways, (place, step) => (step.Id, Number: place.Index + 1)).ToDictionary(step => step.Id, step => step.Number);

    /// <summary>The chart of a procedure.</summary>
    /// <param name="procedure">The procedure in the language of the chart.</param>
    /// <param name="words">The words of that language.</param>
    public static WallChart Of(Procedure procedure, IStringLocalizer<Words> words) => new(procedure, ChartOrder.Of(procedure), words);

    /// <summary>The steps in the order of the plan.</summary>
    public IReadOnlyList<ChartStep> Steps => [.. Order.Places.Index().Select(place => Step(place.Item, place.Index))];

    /// <summary>What goes wrong when the order is not kept, the gravest first.</summary>
    public IReadOnlyList<ChartCaution> Cautions => [.. Procedure.Rules
        .Select(rule => new ChartCaution(SignalWords.Of(rule.Stakes), Numbers(Later(rule)), Asks(rule), rule.Because, rule.Otherwise))
        .Where(caution => caution.Places.Count > 0 && caution.Asks.Length > 0)
        .OrderBy(caution => caution.Word).ThenBy(caution => caution.Places[0])];

    /// <summary>What must never be done, the gravest first.</summary>
    public IReadOnlyList<ChartNever> Never => [.. Procedure.Decoys
        .Select(decoy => new ChartNever(SignalWords.Of(decoy.Stakes), decoy.Do, decoy.Because, decoy.Otherwise)).OrderBy(never => never.Word)];

    /// <summary>The plan for the sheet, its letters as large as they can be.</summary>
    public PaperDrawing Drawing() => LinePlanDrawing.DrawOnPaper(
        new([.. Steps.Select(step => new LinePlanStation(string.Join('\n', step.Lines), step.Note, step.IsWait, step.IsFree, step.Mark))], Order.Waits),
        new(Procedure.Title, Words["after"], Words["The order stands in words beside the plan."]), "chart", PlanWidth, PlanHeight);

    private ChartStep Step(ChartPlace place, int index)
    {
        var behind = Order.Waits.Where(wait => wait.After == index).Select(wait => wait.Before + 1).ToList();
        var marks = Cautions.Where(caution => caution.Word < SignalWord.Notice && caution.Places.Contains(index + 1)).Select(caution => (SignalWord?)caution.Word);
        return new(Lines(place), Note(place, index + 1), behind)
        {
            IsWait = place.Ways.All(way => way.IsWait),
            IsFree = place.Ways.All(way => way.IsOptional) || (!place.IsForKinds && place.Ways.Count > 1),
            Mark = marks.Min(),
        };
    }

    private IReadOnlyList<string> Lines(ChartPlace place) => [.. place.Ways.Index().Select(way => (place.IsForKinds, way.Index) switch
    {
        (true, _) when way.Item.Variants.Count > 0 => $"{string.Join(", ", way.Item.Variants.Select(ChassisKind.Named))}: {way.Item.Do}",
        (false, > 0) => Words["or: {0}", way.Item.Do].Value,
        _ => way.Item.Do,
    })];

    private string? Note(ChartPlace place, int number)
    {
        var waits = Procedure.Rules.OfType<OrderRule>().Where(rule => rule.AtLeast is not null && Numbers(rule.Then).Contains(number))
            .Select(rule => Words["{0} or longer after {1}", Dates.Span(rule.AtLeast!.Value), Said(Numbers(rule.First))].Value);
        string[] notes = [.. place.Ways.All(way => way.IsOptional) ? [Words["if needed"].Value] : Array.Empty<string>(), .. waits];
        return notes.Length > 0 ? string.Join("; ", notes) : null;
    }

    private string Asks(Rule rule) => rule switch
    {
        OrderRule { AtLeast: { } least } order when Numbers(order.First).Count > 0 =>
            Words["{0} before {1}, by {2}", Said(Numbers(order.First)), Said(Numbers(order.Then)), Dates.Span(least)],
        OrderRule order when Numbers(order.First).Count > 0 => Words["{0} before {1}", Said(Numbers(order.First)), Said(Numbers(order.Then))],
        StateRule state => Words["{0} only while {1}", Said(Numbers([state.Step])), string.Join(", ", state.OnlyWhile.Select(Named))],
        _ => "",
    };

    private string Named(FactSetting setting)
    {
        var fact = Procedure.Facts.First(fact => fact.Id == setting.Fact);
        return $"{fact.Called}: {fact.NameOf(setting.Value)}";
    }

    private static IReadOnlyList<StepId> Later(Rule rule) => rule switch
    {
        OrderRule order => order.Then,
        StateRule state => [state.Step],
        _ => [],
    };

    private IReadOnlyList<int> Numbers(IReadOnlyList<StepId> steps) => [.. steps.Where(numbers.ContainsKey).Select(step => numbers[step]).Distinct().Order()];

    private static string Said(IReadOnlyList<int> numbers) => string.Join(", ", numbers);
}

/// <summary>A step of a wall chart.</summary>
/// <param name="Lines">What is done: one line, or one for each way or kind of vehicle.</param>
/// <param name="Note">How long after what, and whether it is done only if needed; null for neither.</param>
/// <param name="After">The numbers of the steps right before it.</param>
public sealed record ChartStep(IReadOnlyList<string> Lines, string? Note, IReadOnlyList<int> After)
{
    /// <summary>Whether it is a wait.</summary>
    public bool IsWait { get; init; }

    /// <summary>Whether it is done only if needed, or in one of several ways.</summary>
    public bool IsFree { get; init; }

    /// <summary>How gravely somebody is hurt who does it at the wrong time; null for nobody.</summary>
    public SignalWord? Mark { get; init; }
}

/// <summary>A caution of a wall chart.</summary>
/// <param name="Word">Its signal word.</param>
/// <param name="Places">The numbers of the steps that must wait.</param>
/// <param name="Asks">What is asked, by numbers: <c>3 before 9</c>.</param>
/// <param name="Because">Why.</param>
/// <param name="Otherwise">What happens otherwise.</param>
public sealed record ChartCaution(SignalWord Word, IReadOnlyList<int> Places, string Asks, string? Because, string? Otherwise);

/// <summary>What must never be done.</summary>
/// <param name="Word">Its signal word.</param>
/// <param name="Do">What it is.</param>
/// <param name="Because">Why never.</param>
/// <param name="Otherwise">What happens otherwise.</param>
public sealed record ChartNever(SignalWord Word, string Do, string? Because, string? Otherwise);
